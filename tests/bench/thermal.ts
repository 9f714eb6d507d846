/**
 * `npm run bench:thermal`: how well the time to a temperature is told, on simulated readings. Prints one JSON object.
 * THERMAL_SEED and THERMAL_COUNT choose the runs.
 */
import { studentQuantile } from '../../src/trade/quantile'
import { outlookOf } from '../../src/trade/thermal'
import { scoreOf } from '../support/thermal-score'
import { coolingRun, heatingRun } from '../support/thermal-simulator'

const seed = Number(process.env.THERMAL_SEED ?? 1)
const count = Number(process.env.THERMAL_COUNT ?? 4000)
const seeds = Array.from({ length: count }, (_, index) => seed + index)
const tooLow = seeds.map((each) => heatingRun(each, 62))

console.log(
  JSON.stringify({
    cooling: scoreOf(seeds.map(coolingRun), studentQuantile),
    heating: scoreOf(
      seeds.map((each) => heatingRun(each)),
      studentQuantile,
    ),
    /** A plate that ends at 62 °C: what is said after its readings. */
    plateTooLow: tally(tooLow.map((run) => outlookOf(run, studentQuantile).kind)),
  }),
)

function tally(kinds: readonly string[]): Record<string, number> {
  const counts: Record<string, number> = {}
  for (const kind of kinds) counts[kind] = (counts[kind] ?? 0) + 1
  return counts
}
