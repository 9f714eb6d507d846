import { useMemo } from 'preact/hooks'
import { minutesLeft } from '../../app/forecast-words'
import { useFormat } from '../../app/format'
import { useForecasts } from '../../app/use-forecasts'
import { waitingLines } from '../../batch/waiting-lines'
import { TimerChip } from '../../parts/chips'
import { weighMoment } from './cards/thermal-words'
import { useRun } from './run-context'

/** When this batch's next vessel gets there, and that it is time to weigh what waits for it. */
export function ForecastChip() {
  const run = useRun()
  const format = useFormat()
  const forecasts = useForecasts()
  const { state } = run.handle.view.value
  const told = useMemo(() => forecasts?.soonestHere(state), [forecasts, state])
  const planned = told && state.plan.byId.get(told.course.step)
  if (!told || !planned || run.stepId.value === planned.id) return null
  const nowMs = run.app.nowMs.value
  const left = minutesLeft(told.reach, nowMs)
  const target = `${format.number(told.course.targetC)} °C`
  const when = left === null ? `${target} by now` : `in ${left} min`
  const waiting = told.course.kind === 'cooling' ? waitingLines(state, planned) : null
  const isTime = waiting !== null && weighMoment(told, waiting, nowMs)?.when !== 'later'
  const isInCup = waiting?.steps.includes(run.stepId.value ?? '') ?? false
  return (
    <li>
      <TimerChip
        icon="thermometer"
        small={isTime && !isInCup ? `${target} ${when}` : left === null ? 'Read it' : target}
        bold={isTime && !isInCup ? `weigh phase ${waiting.phase}` : when}
        onPress={() => run.take(isTime && !isInCup ? (waiting.steps[0] ?? planned.id) : planned.id)}
      />
    </li>
  )
}
