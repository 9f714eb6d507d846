import { tipIn, weigh, weighChecked } from './acts.ts'
import { begin } from './begin.ts'
import { type Bench, idOf, openBench } from './bench.ts'
import { gel } from './formula-gel.ts'
import { lotion } from './formula-lotion.ts'
import { headerOf } from './header.ts'
import { oilLines, waterLines, weighAll } from './lotion-run.ts'
import { g } from './mass.ts'

/**
 * Lotion 013, half-way: the slurry is in and its time not started, the oil phase is being weighed, and a scoop of
 * emulsifier too many lies in the beaker with nothing decided yet. The gum is not locked, so that every way on is open.
 */
export function halfwayLotion(): Bench {
  const opened = '2026-11-24T10:14:00+00:00'
  const header = headerOf(lotion, {
    id: idOf(Date.parse(opened), 13),
    number: 13,
    sizeUg: g(500),
    on: '2026-11-24',
    empty: new Set(['lot-sg-214']),
  })
  const bench = begin(openBench(header, opened, 113), header)
  weighAll(bench, waterLines)
  tipIn(bench, 'a-slurry-in', g(4))
  for (const step of oilLines.slice(0, 2)) weigh(bench, step)
  const mistyped = weigh(bench, 'b-shea', g(99.8))
  bench.wait(0.3)
  bench.intend({ do: 'strike', entry: mistyped, reason: 'slip of the point' })
  weigh(bench, 'b-shea')
  weigh(bench, 'b-emulsifier', g(18.62))
  return bench
}

/** Gel 001, on the next plate: its carbomer has just gone in, and the 45 minutes wait for the last dry speck. */
export function gelInHand(): Bench {
  const opened = '2026-11-24T09:56:00+00:00'
  const header = headerOf(gel, {
    id: idOf(Date.parse(opened), 21),
    number: 1,
    sizeUg: g(400),
    on: '2026-11-24',
    performs: 'person-mo',
  })
  const bench = begin(openBench(header, opened, 121), header)
  weigh(bench, 'a-water')
  weighChecked(bench, 'a-carbomer')
  bench.wait(2)
  tipIn(bench, 'a-carbomer-in', 0)
  return bench
}
