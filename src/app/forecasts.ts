import { type Forecast, forecastOf, forecastsOf, type Told } from '../batch/forecast'
import { type MissedMeeting, missedMeetings } from '../batch/meeting'
import type { PlannedStep } from '../batch/plan'
import type { BatchState } from '../batch/state'
import { studentQuantile } from '../trade/quantile'

// With the library of quantiles: this file is fetched after the first screen, by `useForecasts`.

export const forecastHere = (state: BatchState, planned: PlannedStep): Forecast | null =>
  forecastOf(state, planned, studentQuantile)

/** The vessel of this batch that gets there first. */
export const soonestHere = (state: BatchState): Told | undefined => forecastsOf(state, studentQuantile)[0]

export const missedHere = (state: BatchState, planned: PlannedStep, nowMs: number): readonly MissedMeeting[] =>
  missedMeetings(state, planned, nowMs, studentQuantile)
