import { expect, test } from 'vitest'
import { earlierBatches } from '../../../src/app/earlier-batches'
import type { BatchSummary } from '../../../src/batch/summary'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const step = 'adjust-ph'

/** A lotion whose pH was brought down by one portion. */
function adjusted(): TestBench {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, step)
  const read = (value: number) => bench.measure({ step, check: 'ph', property: 'pH', label: 'pH', value })
  read(6.3)
  bench.intend({ do: 'adjust', step, netUg: grams('2') })
  read(5.1)
  return bench
}

const summary = (id: string, more: Partial<BatchSummary> = {}): BatchSummary =>
  // The look at the shelf uses nothing else of a summary.
  ({ id, formulaId: 'formula-lotion', stage: 'closed', openedAtMs: 1, decision: 'accept', ...more }) as BatchSummary

async function foundOf(summaries: readonly BatchSummary[]) {
  const bench = adjusted()
  const asked: string[] = []
  const app = {
    batches: { finished: async () => summaries },
    log: {
      read: async (stream: string) => {
        asked.push(stream.slice('batch:'.length))
        return stream === 'batch:damaged' ? [] : bench.events
      },
    },
  } as unknown as Parameters<typeof earlierBatches>[0]
  return { found: await earlierBatches(app, bench.state, 'ph'), asked }
}

test('[L79] the newest finished batch of the same formula is read, and no other', async () => {
  const { found, asked } = await foundOf([
    summary('pulled-late', { openedAtMs: 5 }),
    summary('newest', { openedAtMs: 9 }),
    summary('gel', { formulaId: 'formula-gel', openedAtMs: 10 }),
    summary('thrown-away', { decision: 'reject', openedAtMs: 11 }),
    summary('given-up', { stage: 'abandoned', openedAtMs: 12 }),
    summary('one', { openedAtMs: 13 }),
  ])
  expect(asked).toEqual(['newest'])
  expect(found).toMatchObject([{ name: 'Lotion 041', curve: { ph: [5.1, 6.3] } }])
})

test('[L79] a log that cannot be read tells nothing, and the one before it is asked; three at the most', async () => {
  const damaged = { openedAtMs: 9 }
  const { found, asked } = await foundOf([summary('damaged', damaged), summary('sound')])
  expect(asked).toEqual(['damaged', 'sound'])
  expect(found).toHaveLength(1)
  const none = await foundOf([1, 2, 3, 4].map(() => summary('damaged')))
  expect(none.asked).toHaveLength(3)
  expect(none.found).toEqual([])
})
