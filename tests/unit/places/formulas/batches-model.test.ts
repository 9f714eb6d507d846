import { expect, test } from 'vitest'
import type { BatchSummary } from '../../../../src/batch/summary.ts'
import { summaryOf } from '../../../../src/batch/summary-of.ts'
import { createBatchesModel, mostBatches } from '../../../../src/places/formulas/batches-model.ts'
import { demonstrationBatches } from '../../../house/demonstration/files.ts'

const benches = demonstrationBatches()
const [first] = benches
if (!first) throw new Error('no batch')
const template = summaryOf(first.state)

/** Thousands of finished batches, a log of each on request; what is read is counted. */
function storeOf(count: number) {
  const reads: string[] = []
  const all: readonly BatchSummary[] = Array.from({ length: count }, (_, at) => ({
    ...template,
    id: `batch-${at}`,
    code: `QW-${at}`,
    formulaId: at % 2 === 0 ? 'formula-lotion' : 'formula-gel',
    openedAtMs: at * 1000,
    touchedAtMs: at * 1000,
  })).reverse()
  const log = {
    read: async (stream: string) => {
      reads.push(stream)
      if (stream === 'batch:batch-4') throw new Error('damaged')
      return first?.events ?? []
    },
  }
  const finished = async (limit: number, before?: string) =>
    all.filter(({ touchedAtMs }) => before === undefined || touchedAtMs < Date.parse(before)).slice(0, limit)
  return { reads, app: { batches: { finished }, log } as unknown as Parameters<typeof createBatchesModel>[0] }
}

test('[K24] of thousands of batches only the logs of the chosen are read, and it is said that older ones were not looked for', async () => {
  const { reads, app } = storeOf(5000)
  const model = createBatchesModel(app, 'formula-lotion')
  await model.load()
  expect(reads).toHaveLength(mostBatches)
  expect(model.chosen.value.size).toBe(mostBatches)
  expect(model.isCut.value).toBe(true)
  expect(model.known.value.every(({ formulaId }) => formulaId === 'formula-lotion')).toBe(true)
  expect(model.compared.value.map(({ openedAtMs }) => openedAtMs)).toHaveLength(mostBatches)
})

test('[K24] the batch that was asked about is among them, never more than fit, and a damaged one is named', async () => {
  const { reads, app } = storeOf(60)
  const model = createBatchesModel(app, 'formula-lotion', 'batch-4')
  await model.load()
  expect(model.isCut.value).toBe(false)
  expect(model.chosen.value.has('batch-4')).toBe(true)
  expect(model.unreadable.value).toEqual(['QW-4'])
  model.toggle('batch-0')
  expect(model.chosen.value.has('batch-0')).toBe(false)
  model.toggle('batch-4')
  model.toggle('batch-0')
  expect(model.chosen.value.has('batch-0')).toBe(true)
  expect(reads).toContain('batch:batch-4')
  expect(reads).not.toContain('batch:batch-1')
})
