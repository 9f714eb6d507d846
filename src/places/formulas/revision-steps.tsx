import './revision.css'
import { useApp } from '../../app/app'
import type { Revision } from '../../batch/formula'
import type { Step } from '../../batch/step'
import { askOf, type Names, titleOf } from '../../batch/wording'
import { Card } from '../../parts/card'
import { stepKinds } from './step-fields'

/** The procedure in words, in its order. */
export function RevisionSteps({ revision }: { revision: Revision }) {
  const materials = [...useApp().catalogue.materials.value.values()]
  const names: Names = { revision, materials, vessels: revision.vessels }
  return (
    <Card labelledBy="formula-steps" class="formula-card-flat">
      <h2 id="formula-steps">Procedure</h2>
      <ol class="steps">
        {revision.procedure.map((step, index) => (
          <li key={step.id} class="step">
            <span class="step-number">{index + 1}</span>
            <div class="step-words">
              <p class="step-title">
                {step.kind === 'weigh' && step.title === undefined && 'Weigh '}
                {titleOf(step, names)}
                <StepAsk step={step} names={names} />
              </p>
              {step.instruction && <p class="step-how">{step.instruction}</p>}
              <p class="step-how">{placeOf(step, names)}</p>
              {step.caution && <p class="step-caution">{step.caution}</p>}
            </div>
          </li>
        ))}
      </ol>
    </Card>
  )
}

const StepAsk = ({ step, names }: { step: Step; names: Names }) => {
  const ask = askOf(step, names)
  return ask === '' ? null : <span class="step-ask">, {ask}</span>
}

function placeOf(step: Step, { revision }: Names): string {
  const vessel = (id: string) => revision.vessels.find((each) => each.id === id)?.name ?? id
  const kind = stepKinds.find(({ value }) => value === step.kind)?.label.toLowerCase() ?? step.kind
  const phase = revision.phases.some(({ letter }) => letter === step.phase) ? `${step.phase} · ` : ''
  const from =
    step.kind === 'charge' ? `${vessel(step.cup)} into ` : step.kind === 'combine' ? `${vessel(step.from)} into ` : ''
  const second = step.secondPerson ? ' · a second person checks' : ''
  return `${phase}${kind} · ${from}${vessel(step.vessel)}${second}`
}
