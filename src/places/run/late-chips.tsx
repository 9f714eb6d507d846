import { addressOf } from '../../app/routes'
import { TimerChip } from '../../parts/chips'
import { ForecastChip } from './forecast-chip'
import { useRun } from './run-context'

/** Beside the clocks: when a vessel gets there, checks that are due, what to look at again, whether the screen stays on. */
export function LateChips() {
  const run = useRun()
  const due = run.checksDue.value
  const doubts = run.handle.view.value.state.doubts.length
  const awake = run.awake.value
  const bench = addressOf({ place: 'bench' })
  return (
    <>
      <ForecastChip />
      {due > 0 && (
        <li>
          <TimerChip icon="clipboard-check" tone="caution" small="Checks" bold={`${due} due now`} href={bench} />
        </li>
      )}
      {doubts > 0 && (
        <li>
          <TimerChip
            icon="triangle-alert"
            tone="caution"
            small="Look again"
            bold={`${doubts} to check`}
            href={addressOf({ place: 'records', batch: run.handle.id })}
          />
        </li>
      )}
      {awake !== 'kept' && (
        <li>
          <TimerChip icon="moon" tone="caution" small="Screen" bold="may sleep" onPress={() => run.app.awake.keep()} />
        </li>
      )}
    </>
  )
}
