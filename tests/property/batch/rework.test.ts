import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type RemedyOffer, remediesFor } from '../../../src/batch/deviation'
import type { Event } from '../../../src/batch/event'
import { foldBatch } from '../../../src/batch/fold'
import type { ReworkStep } from '../../../src/batch/intention'
import { isKnown } from '../../../src/batch/kinds'
import { bandOfStep, statusOf } from '../../../src/batch/progress'
import { problemOf } from '../../../src/batch/remedy-problem'
import { addedInAll, contentsOf, inSink, massIn } from '../../../src/trade/ledger'
import { heldInAll } from '../../../src/trade/ledger-sums'
import { roundToStep } from '../../../src/trade/mass'
import { gramsFromMicrograms } from '../../../src/trade/mass-ratio'
import { forkOf, grams, type TestBench } from '../../support/batch'
import { formulas, headerFor } from '../../support/formulas'
import { closedBench, openRework, runOut } from '../../support/rework'
import { propertyRuns } from '../runs'

const sinks = ['evaporated', 'sampled', 'left-behind', 'spilled', 'discarded', 'filled'] as const

const wish = fc.record({
  formula: fc.constantFrom('lotion' as const, 'conditioner' as const, 'gel' as const, 'shampoo' as const),
  mode: fc.constantFrom('as-you-go' as const, 'weigh-up-first' as const),
  /** Which lines are added to: by their place in the formula; one more than there are is something foreign. */
  lines: fc.uniqueArray(fc.nat(14), { minLength: 1, maxLength: 3 }),
  g: fc.double({ min: 0.5, max: 30, noNaN: true }),
  keptG: fc.integer({ min: 0, max: 200 }),
  over: fc.double({ min: 1.02, max: 1.6, noNaN: true }),
})

type Wish = typeof wish extends fc.Arbitrary<infer W> ? W : never

/** Closed batches are made once: making one takes longer than all that is tried on it. */
const made = new Map<string, TestBench>()

function reworkedBatch({ formula, mode, lines, g, keptG }: Wish): TestBench {
  const key = `${formula} ${mode}`
  const closed = made.get(key) ?? closedBench(headerFor(formulas[formula], { mode }))
  made.set(key, closed)
  const bench = forkOf(closed.events, 'again')
  const all = [...bench.state.plan.lines.values()]
  const steps = lines.map((place): ReworkStep => {
    const planned = all[place]
    const massUg = roundToStep(grams(g), planned?.balance.stepUg ?? 10_000)
    const what = planned ? { line: planned.line.id, name: planned.material.name } : { name: 'Castor oil' }
    return { kind: 'add', vessel: 'main', massUg, ...what }
  })
  openRework(bench, steps, { keptUg: Math.min(grams(keptG), inSink(bench.state.ledger, 'filled') - 1) })
  return bench
}

function overWeighed(bench: TestBench, over: number): boolean {
  const [step = ''] = bench.state.parts.at(-1)?.steps ?? []
  bench.read('main', 21)
  const planned = bench.state.plan.byId.get(step)
  const stepUg = planned?.line?.balance.stepUg ?? 1
  bench.weigh(step, String(gramsFromMicrograms(roundToStep((planned?.targetUg ?? 0) * over, stepUg))))
  return statusOf(bench.state, step) === 'over'
}

/** What weighing to a way's targets may be off by: half a step for each reading since, the band where none was asked for. */
function bandsUg({ state }: TestBench, since: readonly Event[], { targets }: RemedyOffer): number {
  const weighed = since.filter((event) => isKnown(event)).filter((event) => event.kind === 'weighed')
  const read = weighed.map(({ body }) => (state.plan.lines.get(body.line)?.balance.stepUg ?? 0) / 2 + 1)
  const met = targets.filter(({ step }) => weighed.every(({ body }) => body.step !== step))
  const bands = met.map(({ step, toUg }) => {
    const planned = state.plan.byId.get(step)
    return planned ? bandOfStep(state, planned).highUg - toUg : 0
  })
  return [...read, ...bands].reduce((sum, each) => sum + each, 0)
}

function expectConserved({ state, events }: TestBench): void {
  const { ledger } = state
  expect(heldInAll(ledger) + inSink(ledger, ...sinks)).toBe(addedInAll(ledger))
  expect(state.doubts).toEqual([])
  expect(foldBatch([...events].reverse())).toEqual(state)
}

const slow = { timeout: 120_000 }
const fewer = { ...propertyRuns, numRuns: Math.ceil(propertyRuns.numRuns / 4) }

test('[K14] what a rework begins with is its plan: nothing is off before anything is weighed', slow, () => {
  fc.assert(
    fc.property(wish, (what) => {
      const bench = reworkedBatch(what)
      const problem = problemOf(bench.state)
      const held = contentsOf(bench.state.ledger, 'main')
      for (const line of problem.lines) expect(line.massUg).toBe(held.get(line.id) ?? 0)
      const inUg = problem.lines.reduce((sum, { massUg }) => sum + massUg, 0)
      const asked = bench.state.parts.at(-1)?.steps.map((id) => bench.state.plan.byId.get(id)?.targetUg ?? 0) ?? []
      expect(problem.totalUg).toBe(inUg + asked.reduce((sum, massUg) => sum + massUg, 0))
      runOut(bench)
      expectConserved(bench)
    }),
    fewer,
  )
})

test(
  '[K14] over-weighed in a rework, every way on that is offered ends where it says, and mass is conserved',
  slow,
  () => {
    fc.assert(
      fc.property(wish, (what) => {
        const bench = reworkedBatch(what)
        if (!overWeighed(bench, what.over)) return
        for (const offer of remediesFor(bench.state, bench.deviation().id)) {
          if (!offer.feasible || offer.remedy === 'discard' || bench.deviation().inCup) continue
          const page = forkOf(bench.events, 'replay')
          page.by = bench.by
          const { totalUg, heldBackUg, targets, remedy } = offer
          const figures = { totalUg, heldBackUg, targets }
          page.intend({ do: 'settle', deviation: page.deviation().id, remedy, reason: 'as offered', figures })
          runOut(page)
          expect(Math.abs(massIn(page.state.ledger, 'main') - offer.endsUg)).toBeLessThanOrEqual(
            bandsUg(page, page.events.slice(bench.events.length), offer),
          )
          expectConserved(page)
        }
      }),
      fewer,
    )
  },
)
