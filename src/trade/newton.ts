import { accept, type Result, refuse } from './result'

/** A reading of a thermometer; minutes from any moment, the same one for all. */
export interface TimedReading {
  readonly atMin: number
  readonly temperatureC: number
}

/** What the temperature tends to: known for sure, or known with a standard deviation, within limits where there are any. */
export type Asymptote =
  | { readonly kind: 'fixed'; readonly temperatureC: number }
  | {
      readonly kind: 'prior'
      readonly meanC: number
      readonly sdC: number
      readonly leastC?: number
      readonly mostC?: number
    }

/** T = A + D·exp(−k·(t − first)), as fitted. */
export interface NewtonFit {
  readonly asymptoteC: number
  readonly amplitudeC: number
  readonly ratePerMin: number
  readonly firstMin: number
  readonly lastMin: number
  readonly count: number
  /** Pooled variance of a reading, (4σ² + RSS) / (4 + ν), in °C². */
  readonly varianceC2: number
  /** 4 + ν: those of the pooled variance. */
  readonly degreesOfFreedom: number
  /** Of (A, D, k), row by row; the first row and column are 0 where A is fixed. */
  readonly covariance: readonly (readonly number[])[]
}

export type FitRefusal =
  | { readonly code: 'TOO_FEW_READINGS'; readonly count: number }
  | { readonly code: 'READINGS_AT_ONE_MOMENT' }
  | { readonly code: 'READING_NOT_A_NUMBER' }

/** Standard deviation of one reading of a thermometer held in a stirred vessel, °C. */
export const readingSdC = 0.5

/** Weight, in readings, of the standard deviation known beforehand. */
const priorReadings = 4

const lowestLogRate = Math.log(5e-4)
const highestLogRate = Math.log(2)
const gridSize = 80

/**
 * Newton's law of heating and cooling through some readings, by least squares. For one rate k the law is linear in A and
 * D, so that only ln k is searched: a grid from 5e-4 to 2 per minute, then a golden section; no start values are needed.
 * A prior on A counts as one more residual, (A − mean) / sd. Refuses fewer than two readings and readings that all are of
 * one moment.
 */
export function fitNewton(
  readings: readonly TimedReading[],
  asymptote: Asymptote,
  sdC = readingSdC,
): Result<NewtonFit, FitRefusal> {
  if (readings.some(({ atMin, temperatureC }) => !Number.isFinite(atMin) || !Number.isFinite(temperatureC)))
    return refuse({ code: 'READING_NOT_A_NUMBER' })
  if (readings.length < 2) return refuse({ code: 'TOO_FEW_READINGS', count: readings.length })
  const times = readings.map(({ atMin }) => atMin)
  const [firstMin, lastMin] = [Math.min(...times), Math.max(...times)]
  if (!(lastMin > firstMin)) return refuse({ code: 'READINGS_AT_ONE_MOMENT' })
  const rows = readings.map(({ atMin, temperatureC }) => ({ min: atMin - firstMin, celsius: temperatureC }))
  const at = (logRate: number): Linear => linearFit(rows, Math.exp(logRate), asymptote, sdC)
  const logRate = leastOf((value) => at(value).misfit)
  const { asymptoteC, amplitudeC, squares } = at(logRate)
  const nu = asymptote.kind === 'fixed' ? rows.length - 2 : rows.length + 1 - 3
  const degreesOfFreedom = priorReadings + nu
  const varianceC2 = (priorReadings * sdC * sdC + squares) / degreesOfFreedom
  const ratePerMin = Math.exp(logRate)
  const line = { asymptoteC, amplitudeC, ratePerMin }
  const covariance = covarianceOf(rows, line, asymptote, sdC).map((row) => row.map((value) => value * varianceC2))
  return accept({ ...line, firstMin, lastMin, count: rows.length, varianceC2, degreesOfFreedom, covariance })
}

/** The temperature that a fit has for a moment, °C. */
export const temperatureAt = ({ asymptoteC, amplitudeC, ratePerMin, firstMin }: NewtonFit, atMin: number): number =>
  asymptoteC + amplitudeC * Math.exp(-ratePerMin * (atMin - firstMin))

/** How fast it changes then, °C a minute. */
export const slopeAt = (fit: NewtonFit, atMin: number): number =>
  -fit.ratePerMin * (temperatureAt(fit, atMin) - fit.asymptoteC)

/** Standard error of that temperature, by the delta method, °C. */
export function temperatureErrorAt(fit: NewtonFit, atMin: number): number {
  const min = atMin - fit.firstMin
  const fall = Math.exp(-fit.ratePerMin * min)
  return errorOf(fit, [1, fall, -fit.amplitudeC * min * fall])
}

/** Standard error of a figure that depends on (A, D, k) with these slopes. */
export function errorOf({ covariance }: NewtonFit, slopes: readonly [number, number, number]): number {
  const variance = slopes.reduce(
    (sum, slope, row) =>
      sum + slope * slopes.reduce((inner, other, column) => inner + other * (covariance[row]?.[column] ?? 0), 0),
    0,
  )
  return Math.sqrt(Math.max(0, variance))
}

interface Row {
  readonly min: number
  readonly celsius: number
}

interface Linear {
  readonly asymptoteC: number
  readonly amplitudeC: number
  /** Sum of the squared residuals of the readings, °C². */
  readonly squares: number
  /** The same and the prior's, in units of a reading's variance. */
  readonly misfit: number
}

/** The best A and D for one rate. */
function linearFit(rows: readonly Row[], rate: number, asymptote: Asymptote, sdC: number): Linear {
  const falls = rows.map(({ min }) => Math.exp(-rate * min))
  const asymptoteC = asymptote.kind === 'fixed' ? asymptote.temperatureC : bestAsymptote(rows, falls, asymptote, sdC)
  let [above, weight] = [0, 0]
  rows.forEach(({ celsius }, index) => {
    const fall = falls[index] ?? 0
    above += (celsius - asymptoteC) * fall
    weight += fall * fall
  })
  const amplitudeC = above / weight
  const squares = rows.reduce(
    (sum, { celsius }, index) => sum + (celsius - asymptoteC - amplitudeC * (falls[index] ?? 0)) ** 2,
    0,
  )
  const ofPrior = asymptote.kind === 'fixed' ? 0 : ((asymptoteC - asymptote.meanC) / asymptote.sdC) ** 2
  return { asymptoteC, amplitudeC, squares, misfit: squares / (sdC * sdC) + ofPrior }
}

/** A from the normal equations of (A, D), with D eliminated; kept inside its limits. */
function bestAsymptote(
  rows: readonly Row[],
  falls: readonly number[],
  { meanC, sdC: priorSdC, leastC = Number.NEGATIVE_INFINITY, mostC = Number.POSITIVE_INFINITY }: PriorOf,
  sdC: number,
): number {
  const pull = (sdC / priorSdC) ** 2
  let [ones, fallSum, fallSquares, sum, fallTimes] = [pull, 0, 0, pull * meanC, 0]
  rows.forEach(({ celsius }, index) => {
    const fall = falls[index] ?? 0
    ones += 1
    fallSum += fall
    fallSquares += fall * fall
    sum += celsius
    fallTimes += fall * celsius
  })
  const determinant = ones * fallSquares - fallSum * fallSum
  const free = (sum * fallSquares - fallSum * fallTimes) / determinant
  return Math.min(mostC, Math.max(leastC, free))
}

type PriorOf = Extract<Asymptote, { kind: 'prior' }>

/** (JᵀJ)⁻¹ of (A, D, k), J in °C, the prior's row weighted as the readings are. */
function covarianceOf(
  rows: readonly Row[],
  { amplitudeC, ratePerMin }: { readonly amplitudeC: number; readonly ratePerMin: number },
  asymptote: Asymptote,
  sdC: number,
): number[][] {
  const aa = asymptote.kind === 'fixed' ? 0 : (sdC / asymptote.sdC) ** 2
  const sums = { aa, ad: 0, ak: 0, dd: 0, dk: 0, kk: 0 }
  for (const { min } of rows) {
    const fall = Math.exp(-ratePerMin * min)
    const byRate = -amplitudeC * min * fall
    sums.aa += 1
    sums.ad += fall
    sums.ak += byRate
    sums.dd += fall * fall
    sums.dk += fall * byRate
    sums.kk += byRate * byRate
  }
  const minor = sums.dd * sums.kk - sums.dk * sums.dk
  if (asymptote.kind === 'fixed')
    return [
      [0, 0, 0],
      [0, sums.kk / minor, -sums.dk / minor],
      [0, -sums.dk / minor, sums.dd / minor],
    ]
  const ofD = sums.ak * sums.dk - sums.ad * sums.kk
  const ofK = sums.ad * sums.dk - sums.ak * sums.dd
  const determinant = sums.aa * minor + sums.ad * ofD + sums.ak * ofK
  const dk = sums.ad * sums.ak - sums.aa * sums.dk
  return [
    [minor, ofD, ofK],
    [ofD, sums.aa * sums.kk - sums.ak * sums.ak, dk],
    [ofK, dk, sums.aa * sums.dd - sums.ad * sums.ad],
  ].map((row) => row.map((value) => value / determinant))
}

/** Where a function of ln k is least: the best of a grid, then a golden section between its neighbours. */
function leastOf(misfit: (logRate: number) => number): number {
  const width = (highestLogRate - lowestLogRate) / (gridSize - 1)
  const grid = Array.from({ length: gridSize }, (_, index) => lowestLogRate + index * width)
  const values = grid.map(misfit)
  const best = grid[values.indexOf(Math.min(...values))] ?? lowestLogRate
  let [low, high] = [Math.max(lowestLogRate, best - width), Math.min(highestLogRate, best + width)]
  const golden = (Math.sqrt(5) - 1) / 2
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)]
  let [atLeft, atRight] = [misfit(left), misfit(right)]
  while (high - low > 1e-10) {
    if (atLeft < atRight) {
      ;[high, right, atRight] = [right, left, atLeft]
      left = high - golden * (high - low)
      atLeft = misfit(left)
    } else {
      ;[low, left, atLeft] = [left, right, atRight]
      right = low + golden * (high - low)
      atRight = misfit(right)
    }
  }
  return (low + high) / 2
}
