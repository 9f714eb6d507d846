import './weigh-head.css'
import { FactButton } from '../../../parts/chips'
import { Icon } from '../../../parts/icon'
import { useRun } from '../run-context'
import { lotInUse } from '../weigh-model'
import { hazardIcon } from './hazard-icon'
import { StepHeading } from './step-heading'

/** Bench name, INCI name, what to do; the lot; what to wear, where the hand is about to move. */
export function WeighHead() {
  const run = useRun()
  const planned = run.planned.value
  const line = planned?.line
  if (!planned || !line) return null
  const { state } = run.handle.view.value
  const { material } = line
  const inci = material.inci.map(({ name }) => name).join(', ')
  const lotId = lotInUse(state, planned.id, run.draft.value)
  const lot = line.lots.find(({ id }) => id === lotId) ?? run.app.catalogue.lots.value.get(lotId ?? '')
  const caution = planned.step.caution ?? material.hazards?.caution
  return (
    <>
      <header class="eye-head">
        <div class="eye-title">
          {/* A fresh one for each step: the focus moves to it, so that it is read out. */}
          <StepHeading key={planned.id} text={material.name} />
          {planned.step.instruction && <p class="eye-under">{planned.step.instruction}</p>}
          {inci !== '' && inci.toLowerCase() !== material.name.toLowerCase() && <p class="eye-inci">{inci}</p>}
        </div>
        <FactButton
          small="lot"
          bold={lot?.code ?? 'choose'}
          onPress={() => {
            run.sheet.value = { name: 'lot' }
          }}
        />
      </header>
      {caution && (
        <details class="caution">
          <summary>
            <Icon name={hazardIcon(material.hazards?.kind)} />
            {caution}
          </summary>
        </details>
      )}
    </>
  )
}
