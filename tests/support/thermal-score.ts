import type { Quantile } from '../../src/trade/thermal'
import { outlookOf } from '../../src/trade/thermal'
import type { SimulatedRun } from './thermal-simulator'

export interface ThermalScore {
  readonly runs: number
  /** Share of runs for which no time was told. */
  readonly declined: number
  readonly errorMedianMin: number
  readonly errorP90Min: number
  /** Share of the told intervals that hold the true moment. */
  readonly covered: number
  /** Median of (high − low) / (2 · R). */
  readonly halfWidth: number
  /** Share of runs called hopeless though they get there. */
  readonly wronglyNever: number
  /** What a straight line through the last two readings is off by on the same told runs. */
  readonly straightLine: { readonly errorMedianMin: number; readonly errorP90Min: number }
}

/** How the estimate does on simulated runs that reach their target after the last reading. */
export function scoreOf(runs: readonly SimulatedRun[], quantile: Quantile): ThermalScore {
  const told: { error: number; covered: boolean; width: number; line: number }[] = []
  let never = 0
  for (const run of runs) {
    const outlook = outlookOf(run, quantile)
    if (outlook.kind === 'never') never += 1
    if (outlook.kind !== 'time') continue
    const truth = run.reachedAtMin - (run.readings.at(-1)?.atMin ?? 0)
    const { remainingMin, lowMin, highMin, relativeHalfWidth } = outlook.time
    told.push({
      error: Math.abs(remainingMin - truth),
      covered: lowMin <= truth && truth <= highMin,
      width: relativeHalfWidth,
      line: Math.abs(lineThroughLastTwo(run) - truth),
    })
  }
  const share = (count: number, of: number): number => Number((count / Math.max(1, of)).toFixed(4))
  return {
    runs: runs.length,
    declined: share(runs.length - told.length, runs.length),
    errorMedianMin: quantileOf(
      told.map(({ error }) => error),
      0.5,
    ),
    errorP90Min: quantileOf(
      told.map(({ error }) => error),
      0.9,
    ),
    covered: share(told.filter(({ covered }) => covered).length, told.length),
    halfWidth: quantileOf(
      told.map(({ width }) => width),
      0.5,
    ),
    wronglyNever: share(never, runs.length),
    straightLine: {
      errorMedianMin: quantileOf(
        told.map(({ line }) => line),
        0.5,
      ),
      errorP90Min: quantileOf(
        told.map(({ line }) => line),
        0.9,
      ),
    },
  }
}

function lineThroughLastTwo({ readings, targetC }: SimulatedRun): number {
  const [a, b] = readings.slice(-2)
  if (a === undefined || b === undefined) return Number.POSITIVE_INFINITY
  const remaining = ((targetC - b.temperatureC) * (b.atMin - a.atMin)) / (b.temperatureC - a.temperatureC)
  return remaining > 0 ? remaining : Number.POSITIVE_INFINITY
}

function quantileOf(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return Number((sorted[Math.floor(part * (sorted.length - 1))] ?? Number.NaN).toFixed(2))
}
