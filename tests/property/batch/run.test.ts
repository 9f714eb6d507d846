import fc from 'fast-check'
import { expect, test } from 'vitest'
import { remediesFor } from '../../../src/batch/deviation'
import type { Event } from '../../../src/batch/event'
import { foldBatch } from '../../../src/batch/fold'
import { gatesOf } from '../../../src/batch/gates'
import type { WeighMode } from '../../../src/batch/header'
import { lineTargetUg, strangersUg } from '../../../src/batch/line-targets'
import { statusOf, totalsOf } from '../../../src/batch/progress'
import type { BatchState } from '../../../src/batch/state'
import { summaryOf } from '../../../src/batch/summary-of'
import { weighingOf } from '../../../src/batch/weighing-of'
import { underOf } from '../../../src/batch/wording'
import { addedInAll, inSink } from '../../../src/trade/ledger'
import { heldInAll } from '../../../src/trade/ledger-sums'
import { fingerprint, forkOf, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { acts, perform } from '../../support/random-acts'
import { runUpTo } from '../../support/run'
import { propertyRuns } from '../runs'

/** Each run is a batch of its own. */
const slow = { timeout: 600_000 }

/** Some point of a run, up to which everything was done without a fault. */
const somewhere = fc.record({
  mode: fc.constantFrom('as-you-go' as const, 'weigh-up-first' as const),
  stop: fc.constantFrom(undefined, 'a-hydrate', 'b-into-a', 'c-in', 'adjust-ph', 'sample'),
})

const made = new Map<string, readonly Event[]>()

function benchAt({ mode, stop }: { mode: WeighMode; stop: string | undefined }): TestBench {
  const key = `${mode} ${stop}`
  const known = made.get(key)
  if (known) return forkOf(known, 'bench')
  const bench = openTestBench(lotionHeader({ mode }))
  if (stop !== undefined) runUpTo(bench, stop)
  made.set(key, bench.events)
  return benchAt({ mode, stop })
}

const isConserved = ({ ledger }: BatchState): boolean =>
  addedInAll(ledger) ===
  heldInAll(ledger) + inSink(ledger, 'evaporated', 'sampled', 'left-behind', 'spilled', 'discarded', 'filled')

/** Whatever the screen asks of a state can be answered. */
function look(state: BatchState, nowMs: number): void {
  const summary = summaryOf(state)
  expect(summary.done).toBeLessThanOrEqual(summary.steps)
  for (const planned of state.plan.steps) {
    statusOf(state, planned.id)
    underOf(state, planned)
    for (const moment of ['begin', 'finish'] as const) gatesOf(state, planned.id, nowMs, moment)
    const weighing = weighingOf(state, planned.id)
    if (weighing) expect(weighing.leftUg).toBeGreaterThanOrEqual(0)
  }
  for (const deviation of state.deviations.keys())
    for (const offer of remediesFor(state, deviation)) expect(offer.totalUg).toBeGreaterThan(0)
}

test(
  '[L1] whatever people want, in any order: nothing throws, refusals change nothing, mass is conserved, no doubts',
  slow,
  () => {
    fc.assert(
      fc.property(somewhere, acts(false), (start, sequence) => {
        const bench = benchAt(start)
        for (const act of sequence) {
          const before = bench.state
          const count = bench.events.length
          const outcome = perform(bench, act)
          if (bench.events.length === count) expect(bench.state).toBe(before)
          else if (outcome === 'refused') expect(act.want).toBe('usual')
          expect(bench.state.doubts).toEqual([])
          expect(isConserved(bench.state)).toBe(true)
        }
        const { state } = bench
        // Had a decision, refused or not, changed the state that it looked at, the log would tell another story.
        expect(fingerprint(state)).toBe(fingerprint(foldBatch(bench.events)))
        look(state, bench.nowMs)
        const { inUg, dueUg, totalUg } = totalsOf(state)
        expect(Math.min(inUg, dueUg, totalUg, state.heldBackUg)).toBeGreaterThanOrEqual(0)
        const targets = [...state.plan.lines.keys()].map((line) => lineTargetUg(state, line))
        expect(targets.reduce((sum, massUg) => sum + massUg, strangersUg(state))).toBe(state.totalUg)
      }),
      propertyRuns,
    )
  },
)

test(
  '[E5] whatever is struck out, the rest replays: nothing throws, mass is conserved, every state can be shown',
  slow,
  () => {
    fc.assert(
      fc.property(somewhere, acts(true), (start, sequence) => {
        const bench = benchAt(start)
        for (const act of sequence) {
          perform(bench, act)
          expect(isConserved(bench.state)).toBe(true)
          expect(bench.state.heldBackUg).toBeGreaterThanOrEqual(0)
        }
        look(bench.state, bench.nowMs)
      }),
      propertyRuns,
    )
  },
)

test('[E3] extending entry by entry gives what folding all gives, and leaves the older states alone', slow, () => {
  fc.assert(
    fc.property(somewhere, acts(true, 20), (start, sequence) => {
      const bench = benchAt(start)
      const older: { state: BatchState; was: string }[] = []
      for (const act of sequence) {
        older.push({ state: bench.state, was: fingerprint(bench.state) })
        perform(bench, act)
      }
      expect(fingerprint(bench.state)).toBe(fingerprint(foldBatch(bench.events)))
      for (const { state, was } of older) expect(fingerprint(state)).toBe(was)
    }),
    propertyRuns,
  )
})
