import './steps-bar.css'
import { titleOf } from '../../batch/wording'
import { Icon } from '../../parts/icon'
import { placeInPhase } from './ladder-of'
import { useRun } from './run-context'

/** On a phone, instead of the ladder: where we are, what comes next, and the way to all steps. */
export function StepsBar() {
  const run = useRun()
  const { state } = run.handle.view.value
  const planned = run.planned.value
  const next = planned === null ? undefined : state.plan.steps[planned.index + 1]
  const place = planned === null ? null : placeInPhase(state, planned)
  const letter = planned?.step.phase ?? ''
  return (
    <div class="run-steps">
      <span class="run-steps-letter">{letter.length === 1 ? letter : <Icon name="flag" size={20} />}</span>
      <p class="run-steps-words">
        <b>
          {state.header.shortName}
          {place && ` · step ${place.at} of ${place.of}`}
        </b>
        <span>{next ? `then ${titleOf(next.step, state.header)}` : 'the last step'}</span>
      </p>
      <button
        type="button"
        class="run-steps-all"
        onClick={() => {
          run.sheet.value = { name: 'steps' }
        }}
      >
        <Icon name="list" />
        Steps
      </button>
    </div>
  )
}
