import { useMemo } from 'preact/hooks'
import { useForecasts } from '../../../app/use-forecasts'
import type { Forecast } from '../../../batch/forecast'
import type { MissedMeeting } from '../../../batch/meeting'
import { type Overheating, overheatingOf } from '../../../batch/overheating'
import type { KindOf } from '../../../batch/step'
import { courseOf, type ThermalCourse } from '../../../batch/thermal-course'
import { type WaitingLines, waitingLines } from '../../../batch/waiting-lines'
import { useRun } from '../run-context'

export interface ThermalView {
  readonly course: ThermalCourse | null
  /** Null until what reckons it has come. */
  readonly forecast: Forecast | null
  readonly waiting: WaitingLines | null
  readonly missed: readonly MissedMeeting[]
  readonly tooHot: Overheating | null
}

/** What the readings of the step in hand say. Reckoned once an entry, and once a minute for what meets when. */
export function useThermal(step: KindOf<'heat'> | KindOf<'cool'>): ThermalView {
  const run = useRun()
  const forecasts = useForecasts()
  const { state } = run.handle.view.value
  const minute = Math.floor(run.app.nowMs.value / 60_000)
  const planned = state.plan.byId.get(step.id)
  return useMemo(
    () => ({
      course: planned ? courseOf(state, planned) : null,
      forecast: planned && forecasts ? forecasts.forecastHere(state, planned) : null,
      waiting: planned && step.kind === 'cool' ? waitingLines(state, planned) : null,
      missed: planned && forecasts ? forecasts.missedHere(state, planned, minute * 60_000) : [],
      tooHot: planned ? overheatingOf(state, planned) : null,
    }),
    [forecasts, state, minute, step.id],
  )
}
