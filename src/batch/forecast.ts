import { type Outlook, outlookOf, type Quantile } from '../trade/thermal'
import type { PlannedStep } from './plan'
import { openSteps } from './progress'
import type { BatchState } from './state'
import { courseOf, type ThermalCourse, timedReadings } from './thermal-course'

/**
 * What can be said of when a vessel reaches its figure. An estimate is never an entry: it is made anew from the readings.
 * Moments ms UTC.
 */
export interface Forecast {
  readonly course: ThermalCourse
  readonly outlook: Outlook | { readonly kind: 'ask'; readonly what: 'room' | 'bath' }
  /** When it was last read, and when to read again; absent where nothing is to be waited for. */
  readonly lastAtMs?: number
  readonly readAgainAtMs?: number
  /** The 95 % interval and the likeliest moment, where a time can be told. */
  readonly reach?: { readonly fromMs: number; readonly likelyMs: number; readonly toMs: number }
}

export function forecastOf(state: BatchState, planned: PlannedStep, quantile: Quantile): Forecast | null {
  const course = courseOf(state, planned)
  if (course === null) return null
  const { asymptote, kind, targetC } = course
  const last = course.readings.at(-1)
  const lastAtMs = last === undefined ? {} : { lastAtMs: last.atMs }
  if (asymptote === null) return { course, outlook: askRoom(course), ...lastAtMs }
  const outlook = outlookOf({ kind, readings: timedReadings(course), targetC, asymptote }, quantile)
  if (outlook.kind === 'never' && course.by === 'bath' && course.bathC === undefined)
    return { course, outlook: { kind: 'ask', what: 'bath' }, ...lastAtMs }
  return { course, outlook, ...lastAtMs, ...momentsOf(outlook, last?.atMs) }
}

/** Every step of a batch that heats or cools now and whose time can be told, the soonest first. */
export const forecastsOf = (state: BatchState, quantile: Quantile): readonly Told[] =>
  openSteps(state)
    .flatMap((planned) => forecastOf(state, planned, quantile) ?? [])
    .filter(isTold)
    .sort((a, b) => a.reach.fromMs - b.reach.fromMs)

export type Told = Forecast & Required<Pick<Forecast, 'reach'>>

export const isTold = (forecast: Forecast): forecast is Told => forecast.reach !== undefined

/** Until the room is known a reading can still say that the figure is reached. */
function askRoom({ readings, targetC }: ThermalCourse): Forecast['outlook'] {
  const last = readings.at(-1)
  return last !== undefined && last.temperatureC <= targetC ? { kind: 'reached' } : { kind: 'ask', what: 'room' }
}

function momentsOf(outlook: Outlook, lastAtMs: number | undefined): Partial<Forecast> {
  if (lastAtMs === undefined) return {}
  const after = (minutes: number): number => lastAtMs + Math.round(minutes * 60_000)
  switch (outlook.kind) {
    case 'unclear':
      return { readAgainAtMs: after(outlook.readAgainMin) }
    case 'time': {
      const { lowMin, remainingMin, highMin } = outlook.time
      const reach = { fromMs: after(lowMin), likelyMs: after(remainingMin), toMs: after(highMin) }
      return { readAgainAtMs: after(outlook.readAgainMin), reach }
    }
    default:
      return {}
  }
}
