import { sentenceOf } from '../../../app/refusals'
import type { Gate } from '../../../batch/gate'
import type { Intention } from '../../../batch/intention'
import { nameOfVessel } from '../../../batch/vessel-name'
import { Button } from '../../../parts/button'
import { NumberField } from '../../../parts/number-field'
import { useRun } from '../run-context'
import { useSheetDraft } from './use-sheet-draft'

/** Where the missing figure can be given on the spot, its field; nothing otherwise. */
export function GateCure({ gate, onClose }: { gate: Gate; onClose: () => void }) {
  const run = useRun()
  const draft = useSheetDraft(`cure:${gate.key}`, onClose)
  if (!('vessel' in gate)) return null
  const { vessel } = gate
  const isTare = gate.code === 'NO_TARE'
  if (gate.code === 'CUP_EMPTY' || gate.code === 'CUP_TOO_OLD') return null
  const text = draft.text('figure')
  const typed = isTare ? run.reckoner.mass(text, { negative: false, zero: false }) : run.reckoner.number(text)
  const intentionOf = (value: number): Intention =>
    isTare
      ? { do: 'tare', vessel, tareUg: value }
      : { do: 'read-temperature', vessel, temperatureC: value, ...(run.stepId.value ? { step: run.stepId.value } : {}) }
  const send = () => {
    if (typed.kind === 'number')
      void draft.send(intentionOf(typed.value), nameOfVessel(run.handle.view.value.state, vessel))
  }
  return (
    <div class="sheet-cure">
      <NumberField
        label={
          isTare
            ? 'It weighs empty, with what stands in it'
            : `${nameOfVessel(run.handle.view.value.state, vessel)} now`
        }
        unit={isTare ? 'g' : '°C'}
        value={text}
        error={typed.kind === 'bad' ? sentenceOf(typed.refusal) : undefined}
        onChange={(value) => draft.set('figure', value)}
        onEnter={send}
      />
      <Button kind={typed.kind === 'number' ? 'outline' : 'closed'} label="Record it" onPress={send} />
    </div>
  )
}
