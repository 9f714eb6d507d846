import { type Asymptote, errorOf, fitNewton, type NewtonFit, readingSdC, type TimedReading } from './newton'

/** The p quantile of Student's t; handed in, because the library that knows it is fetched late. */
export type Quantile = (p: number, degreesOfFreedom: number) => number

/** Minutes from the last reading until a temperature, with the 95 % interval and the standard error. */
export interface TimeTo {
  readonly remainingMin: number
  readonly errorMin: number
  readonly lowMin: number
  readonly highMin: number
  /** t · se / R: what an estimate is judged by. Infinite where the moment is past. */
  readonly relativeHalfWidth: number
}

export interface ThermalCase {
  readonly kind: 'cooling' | 'heating'
  /** Since conditions last changed, oldest first. */
  readonly readings: readonly TimedReading[]
  readonly targetC: number
  /** What it tends to; for a plate without a probe see `plateAsymptote`. */
  readonly asymptote: Asymptote
}

export type Outlook =
  | { readonly kind: 'reached' }
  /** Cannot be told yet: why, and how long after the last reading to read again, in minutes. */
  | {
      readonly kind: 'unclear'
      readonly why: 'FEW_READINGS' | 'SMALL_CHANGE' | 'WIDE'
      readonly readAgainMin: number
    }
  /** Two readings that cannot both be right, as indices. */
  | { readonly kind: 'contradiction'; readonly earlier: number; readonly later: number }
  /** Levels out short of the target. */
  | { readonly kind: 'never'; readonly levelC: number }
  | { readonly kind: 'time'; readonly time: TimeTo; readonly fit: NewtonFit; readonly readAgainMin: number }

const fewestReadings = 3
const leastDropC = 5
/** Heating lags behind the plate: readings before this rise are left out. */
const lagRiseC = 6
const mostHalfWidth = { cooling: 0.3, heating: 0.6 }
/** An interval that ends this soon is told however wide it is against what is left. */
const soonMin = 4
/** More than six standard deviations of a difference: against the way, or within one moment, this is no noise. */
const contradictionC = 4
const fastestPerMinC = 15

/** A vessel on a plate without a probe: it would end well above any target. N(110, 20) within 80–200 °C. */
export const plateAsymptote: Asymptote = { kind: 'prior', meanC: 110, sdC: 20, leastC: 80, mostC: 200 }

/** A room whose temperature was read: it is another beside the vessel. */
export const roomAsymptote = (meanC: number): Asymptote => ({ kind: 'prior', meanC, sdC: 1.5 })

/** A bath takes up heat, so that its temperature drifts; one that was not read is cold water from a tap. */
export const bathAsymptote = (meanC: number | undefined): Asymptote =>
  meanC === undefined ? { kind: 'prior', meanC: 15, sdC: 5 } : { kind: 'prior', meanC, sdC: 3 }

/** Where a vessel ends on a plate whose probe holds it: the set point is never quite reached. */
export const heldBelowSetC = 2

/** What can be said of when a vessel reaches its target: the time with its interval, or why there is none. */
export function outlookOf(given: ThermalCase, quantile: Quantile): Outlook {
  const { kind, readings, targetC, asymptote } = given
  const last = readings.at(-1)
  if (last !== undefined && isReached(kind, last.temperatureC, targetC)) return { kind: 'reached' }
  if (kind === 'cooling' && endsAbove(asymptote, targetC)) return { kind: 'never', levelC: centreOf(asymptote) }
  const pair = contradictionIn(kind, readings)
  if (pair !== null) return { kind: 'contradiction', ...pair }
  const settled = kind === 'heating' ? afterLag(readings) : readings
  if (settled.length < fewestReadings)
    return { kind: 'unclear', why: 'FEW_READINGS', readAgainMin: readAgainForChange(readings, kind) }
  const changeC = Math.abs((settled.at(-1)?.temperatureC ?? 0) - (settled[0]?.temperatureC ?? 0))
  if (kind === 'cooling' && changeC < leastDropC)
    return { kind: 'unclear', why: 'SMALL_CHANGE', readAgainMin: readAgainForChange(readings, kind) }
  const short = kind === 'heating' ? levelBelow(settled, targetC, quantile) : null
  if (short !== null) return { kind: 'never', levelC: short }
  const fitted = fitNewton(settled, asymptote)
  if (!fitted.ok) return { kind: 'unclear', why: 'FEW_READINGS', readAgainMin: usualGapMin }
  const time = timeTo(fitted.value, targetC, quantile)
  if (time === 'never') return { kind: 'never', levelC: fitted.value.asymptoteC }
  if (time.highMin > soonMin && time.relativeHalfWidth > mostHalfWidth[kind])
    return { kind: 'unclear', why: 'WIDE', readAgainMin: between(2, time.remainingMin * 0.35, 15) }
  return { kind: 'time', time, fit: fitted.value, readAgainMin: between(2, (time.lowMin * 2) / 3, 15) }
}

/**
 * Time from the last reading until the fit meets the target: −ln((T* − A) / D) / k less what has passed, standard error by
 * the delta method, interval R·exp(± t(.975)·se / R). 'never' where the curve does not meet it.
 */
export function timeTo(fit: NewtonFit, targetC: number, quantile: Quantile): TimeTo | 'never' {
  const { asymptoteC, amplitudeC, ratePerMin } = fit
  const left = (targetC - asymptoteC) / amplitudeC
  if (!(left > 0)) return 'never'
  const sinceFirst = -Math.log(left) / ratePerMin
  const remainingMin = sinceFirst - (fit.lastMin - fit.firstMin)
  const errorMin = errorOf(fit, [
    1 / (ratePerMin * (targetC - asymptoteC)),
    1 / (ratePerMin * amplitudeC),
    -sinceFirst / ratePerMin,
  ])
  const half = quantile(0.975, fit.degreesOfFreedom) * errorMin
  if (remainingMin <= 0) {
    const highMin = Math.max(0, remainingMin + half)
    return { remainingMin, errorMin, lowMin: remainingMin, highMin, relativeHalfWidth: Number.POSITIVE_INFINITY }
  }
  const relativeHalfWidth = half / remainingMin
  return {
    remainingMin,
    errorMin,
    lowMin: remainingMin * Math.exp(-relativeHalfWidth),
    highMin: remainingMin * Math.exp(relativeHalfWidth),
    relativeHalfWidth,
  }
}

const isReached = (kind: ThermalCase['kind'], temperatureC: number, targetC: number): boolean =>
  kind === 'cooling' ? temperatureC <= targetC : temperatureC >= targetC

const centreOf = (asymptote: Asymptote): number =>
  asymptote.kind === 'fixed' ? asymptote.temperatureC : asymptote.meanC

/** The surroundings are at the target or above it: no reading is needed to say so. */
const endsAbove = (asymptote: Asymptote, targetC: number): boolean => centreOf(asymptote) >= targetC

/**
 * Where a plate that is too low lets its vessel end, or null. A tends to anything here (the prior above would hide such a
 * plate), and must lie below the target by more than its uncertainty.
 */
function levelBelow(readings: readonly TimedReading[], targetC: number, quantile: Quantile): number | null {
  if (readings.length <= fewestReadings) return null
  const highestC = Math.max(...readings.map(({ temperatureC }) => temperatureC))
  const anywhere: Asymptote = { kind: 'prior', meanC: 110, sdC: 1000, leastC: highestC - readingSdC, mostC: 250 }
  const fitted = fitNewton(readings, anywhere)
  if (!fitted.ok) return null
  const { asymptoteC, degreesOfFreedom } = fitted.value
  const half = quantile(0.9975, degreesOfFreedom) * errorOf(fitted.value, [1, 0, 0])
  return asymptoteC + half < targetC ? asymptoteC : null
}

/** Against the way it should go, or faster than anything on this bench goes. */
function contradictionIn(
  kind: ThermalCase['kind'],
  readings: readonly TimedReading[],
): { readonly earlier: number; readonly later: number } | null {
  for (let later = 1; later < readings.length; later += 1) {
    for (let earlier = later - 1; earlier >= 0; earlier -= 1) {
      const [a, b] = [readings[earlier], readings[later]]
      if (a === undefined || b === undefined) continue
      const change = b.temperatureC - a.temperatureC
      const against = kind === 'cooling' ? change > contradictionC : -change > contradictionC
      const tooFast = Math.abs(change) > contradictionC + fastestPerMinC * (b.atMin - a.atMin)
      if (against || tooFast) return { earlier, later }
    }
  }
  return null
}

const afterLag = (readings: readonly TimedReading[]): readonly TimedReading[] => {
  const firstC = readings[0]?.temperatureC ?? 0
  const from = readings.findIndex(({ temperatureC }) => temperatureC - firstC >= lagRiseC)
  return from === -1 ? [] : readings.slice(from)
}

const usualGapMin = 4

/** When enough will have changed, at the pace seen so far. */
function readAgainForChange(readings: readonly TimedReading[], kind: ThermalCase['kind']): number {
  const [first, last] = [readings[0], readings.at(-1)]
  if (first === undefined || last === undefined) return 0
  const changeC = Math.abs(last.temperatureC - first.temperatureC)
  const wantedC = kind === 'heating' ? lagRiseC : leastDropC
  if (last.atMin <= first.atMin || changeC < 1 || changeC >= wantedC) return usualGapMin
  return between(2, ((wantedC - changeC) * (last.atMin - first.atMin)) / changeC, 15)
}

const between = (least: number, value: number, most: number): number => Math.min(most, Math.max(least, value))
