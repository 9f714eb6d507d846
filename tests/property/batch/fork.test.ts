import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Event } from '../../../src/batch/event'
import { extendBatch } from '../../../src/batch/extend'
import { foldBatch } from '../../../src/batch/fold'
import type { BatchState } from '../../../src/batch/state'
import { summaryOf } from '../../../src/batch/summary-of'
import { addedInAll, inSink } from '../../../src/trade/ledger'
import { heldInAll } from '../../../src/trade/ledger-sums'
import { fingerprint, forkOf, openTestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { acts, perform } from '../../support/random-acts'
import { propertyRuns } from '../runs'

/** Each run is a batch of its own. */
const slow = { timeout: 600_000 }

const header = lotionHeader()

/** What three tablets wrote, each having seen the batch up to some entry; the third saw both others. */
const forkedLog = fc
  .record({
    common: acts(true, 12),
    first: acts(true, 10),
    second: acts(true, 10),
    third: acts(true, 6),
    merge: fc.boolean(),
  })
  .map(({ common, first, second, third, merge }): readonly Event[] => {
    const bench = openTestBench(header)
    for (const act of common) perform(bench, act)
    const other = forkOf(bench.events, 'another')
    for (const act of second) perform(other, act)
    for (const act of first) perform(bench, act)
    const union = unionOf(bench.events, other.events)
    if (!merge) return union
    const later = forkOf(union, 'third')
    for (const act of third) perform(later, act)
    return later.events
  })

function unionOf(...logs: readonly (readonly Event[])[]): readonly Event[] {
  return [...new Map(logs.flat().map((event) => [event.id, event])).values()]
}

const isConserved = ({ ledger }: BatchState): boolean =>
  addedInAll(ledger) ===
  heldInAll(ledger) + inSink(ledger, 'evaporated', 'sampled', 'left-behind', 'spilled', 'discarded', 'filled')

test('[E2] a forked log folds to the same state in whatever order it arrives, and mass is conserved', slow, () => {
  fc.assert(
    fc.property(
      forkedLog.chain((events) =>
        fc.tuple(fc.constant(events), fc.shuffledSubarray([...events], { minLength: events.length })),
      ),
      ([events, shuffled]) => {
        const state = foldBatch(events)
        expect(fingerprint(foldBatch(shuffled))).toBe(fingerprint(state))
        expect(isConserved(state)).toBe(true)
        summaryOf(state)
      },
    ),
    propertyRuns,
  )
})

test('[E2] entries that arrive in pieces, late or early, lead to the same state as the whole log', slow, () => {
  fc.assert(
    fc.property(forkedLog, fc.array(fc.nat(7), { minLength: 1, maxLength: 8 }), (events, sizes) => {
      const [opened, ...rest] = events
      if (!opened) return
      // Any order in which a branch arrives as it was written: odd pieces of each replica in turn.
      const replicas = [...new Set(rest.map((event) => event.replica))]
      const queues = replicas.map((replica) => rest.filter((event) => event.replica === replica))
      let state = foldBatch([opened])
      for (let turn = 0; queues.some((queue) => queue.length > 0); turn += 1) {
        const queue = queues[turn % queues.length] ?? []
        const piece = queue.splice(0, 1 + (sizes[turn % sizes.length] ?? 0))
        if (piece.length > 0) state = extendBatch(state, piece)
      }
      expect(fingerprint(state)).toBe(fingerprint(foldBatch(events)))
    }),
    propertyRuns,
  )
})

test(
  '[E2] a step that two tablets weighed without knowing of each other counts twice and asks for a look',
  slow,
  () => {
    fc.assert(
      fc.property(acts(false, 15), fc.constantFrom('a-phytate', 'b-shea', 'c-tocopherol'), (common, step) => {
        const bench = openTestBench(header)
        for (const act of common) perform(bench, act)
        const other = forkOf(bench.events, 'another')
        const weigh = {
          do: 'weigh',
          step,
          reading: { mode: 're-tare', readingUg: 900_000 },
          checkedBy: 'person-jt',
        } as const
        const before = addedInAll(bench.state.ledger)
        for (const each of [bench, other]) {
          try {
            each.intend(weigh)
          } catch {
            return
          }
        }
        const state = foldBatch(unionOf(bench.events, other.events))
        expect(addedInAll(state.ledger)).toBe(before + 1_800_000)
        expect(state.doubts.map((doubt) => doubt.code)).toEqual(['WEIGHED_TWICE'])
      }),
      propertyRuns,
    )
  },
)
