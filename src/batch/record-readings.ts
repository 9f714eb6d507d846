import type { PlannedStep } from './plan'
import { entriesOf } from './record-entries'
import type { BatchState } from './state'

export interface TemperatureReading {
  readonly atMs: number
  readonly temperatureC: number
}

export const isThermal = ({ step }: PlannedStep): boolean => ['heat', 'cool', 'hold'].includes(step.kind)

/**
 * Temperatures read for a step that heats, cools or holds, oldest first: those written down at it, and those of its
 * vessel that name no step, from the moment it could begin until it was finished.
 */
export function readingsOf(state: BatchState, planned: PlannedStep): readonly TemperatureReading[] {
  if (!isThermal(planned)) return []
  const fromMs = couldBeginAtMs(state, planned)
  const toMs = state.steps.get(planned.id)?.finished?.atMs ?? Number.POSITIVE_INFINITY
  return entriesOf(state, 'temperature-read', (id) => id)
    .filter(({ struck, atMs, event: { body } }) => {
      if (struck) return false
      if (body.step !== undefined) return body.step === planned.id
      return body.vessel === planned.step.vessel && atMs >= fromMs && atMs <= toMs
    })
    .map(({ atMs, event }) => ({ atMs, temperatureC: event.body.temperatureC }))
    .sort((a, b) => a.atMs - b.atMs)
}

/** When it was started, else when the last of the steps that it waits for was finished. */
function couldBeginAtMs(state: BatchState, planned: PlannedStep): number {
  const startedAtMs = state.steps.get(planned.id)?.startedAtMs
  const before = planned.waitsFor.map((id) => state.steps.get(id)?.finished?.atMs ?? state.openedAtMs)
  return Math.max(
    state.openedAtMs,
    ...before,
    startedAtMs !== undefined && planned.step.kind === 'hold' ? startedAtMs : 0,
  )
}

/** What a reader looks for in a run of readings: where it began, where it ended, how far it went. */
export interface Course {
  readonly first: TemperatureReading
  readonly last: TemperatureReading
  /** Only where they are neither the first nor the last. */
  readonly highest?: TemperatureReading
  readonly lowest?: TemperatureReading
}

export function courseOf(readings: readonly TemperatureReading[]): Course | null {
  const first = readings[0]
  const last = readings.at(-1)
  if (first === undefined || last === undefined) return null
  const byHeat = [...readings].sort((a, b) => a.temperatureC - b.temperatureC)
  const [lowest, highest] = [byHeat[0] ?? first, byHeat.at(-1) ?? last]
  const tells = ({ temperatureC }: TemperatureReading): boolean =>
    temperatureC !== first.temperatureC && temperatureC !== last.temperatureC
  return { first, last, ...(tells(highest) ? { highest } : {}), ...(tells(lowest) ? { lowest } : {}) }
}
