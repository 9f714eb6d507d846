import type { TimedReading } from '../../src/trade/newton'
import { plateAsymptote, roomAsymptote, type ThermalCase } from '../../src/trade/thermal'

/** A vessel that cools or heats, and what a person with a thermometer writes down of it. Minutes, °C. */
export interface SimulatedRun {
  readonly kind: 'cooling' | 'heating'
  readonly targetC: number
  readonly asymptote: ThermalCase['asymptote']
  readonly readings: readonly TimedReading[]
  /** True moment at which the target is reached; infinite where it never is. */
  readonly reachedAtMin: number
}

/** Numbers from 0 to 1, the same for the same seed. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

const thermometerSdC = 0.5

/** A stirred vessel in a room that is 1.5 °C (standard deviation) off what the wall says. */
export function coolingRun(seed: number): SimulatedRun {
  const random = randomFrom(seed)
  const toldC = between(random, 17, 26)
  const roomC = toldC + 1.5 * normal(random)
  const startC = between(random, 68, 82)
  const ratePerMin = Math.exp(between(random, Math.log(0.012), Math.log(0.045)))
  const targetC = pick(random, [35, 40, 40, 45])
  const at = (min: number): number => roomC + (startC - roomC) * Math.exp(-ratePerMin * min)
  const reachedAtMin = -Math.log((targetC - roomC) / (startC - roomC)) / ratePerMin
  const untilMin = reachedAtMin * between(random, 0.25, 0.85)
  return {
    kind: 'cooling',
    targetC,
    asymptote: roomAsymptote(toldC),
    readings: readingsOf(random, at, untilMin, [1.5, 6]),
    reachedAtMin,
  }
}

/** A vessel on a plate that itself takes minutes to warm, and would itself end at 110 ± 20 °C (90 at least) unless told. */
export function heatingRun(seed: number, plateC?: number): SimulatedRun {
  const random = randomFrom(seed)
  const targetC = pick(random, [70, 75, 80])
  const endC = plateC ?? Math.min(200, Math.max(90, 110 + 20 * normal(random)))
  const startC = between(random, 18, 26)
  const ratePerMin = Math.exp(between(random, Math.log(0.03), Math.log(0.08)))
  const lagMin = between(random, 0.5, 2)
  // Two bodies in a row: the plate follows its setting, the vessel follows the plate.
  const lagRate = 1 / lagMin
  const at = (min: number): number =>
    endC -
    ((endC - startC) * (lagRate * Math.exp(-ratePerMin * min) - ratePerMin * Math.exp(-lagRate * min))) /
      (lagRate - ratePerMin)
  const reachedAtMin = endC > targetC ? crossing(at, targetC) : Number.POSITIVE_INFINITY
  const spanMin = Number.isFinite(reachedAtMin) ? reachedAtMin : 4 / ratePerMin
  return {
    kind: 'heating',
    targetC,
    asymptote: plateAsymptote,
    readings: readingsOf(random, at, spanMin * between(random, 0.3, 0.9), [1, 2.5]),
    reachedAtMin,
  }
}

/** Read now and then, to a tenth of a degree, with the noise of a thermometer in a stirred vessel. */
function readingsOf(
  random: () => number,
  at: (min: number) => number,
  untilMin: number,
  gaps: readonly [number, number],
): readonly TimedReading[] {
  const readings: TimedReading[] = []
  const gap = between(random, ...gaps)
  for (let min = 0; min <= untilMin; min += gap * between(random, 0.5, 1.5)) {
    const celsius = at(min) + thermometerSdC * normal(random)
    readings.push({ atMin: min, temperatureC: Math.round(celsius * 10) / 10 })
  }
  return readings
}

/** Bisection on a rising curve. */
function crossing(at: (min: number) => number, targetC: number): number {
  let [low, high] = [0, 1000]
  while (high - low > 1e-9) {
    const middle = (low + high) / 2
    if (at(middle) < targetC) low = middle
    else high = middle
  }
  return low
}

const between = (random: () => number, least: number, most: number): number => least + (most - least) * random()

const pick = (random: () => number, values: readonly number[]): number =>
  values[Math.floor(random() * values.length)] ?? values[0] ?? 0

/** Box–Muller. */
const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
