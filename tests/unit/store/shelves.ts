import type { Event } from '../../../src/batch/event'
import { seal } from '../../../src/batch/seal'
import { advance, emptyTip } from '../../../src/batch/tip'
import type { Archive, ArchivePreview } from '../../../src/ports/archive'
import { archiveOf } from '../../../src/store/archive'
import type { ArchiveShelf } from '../../../src/store/archive-shelf'
import { write } from './support.ts'

export const madeAt = '2026-03-02T18:00:00.000+01:00'

/** A shelf over plain arrays; `room` is how many entries still fit, `largest` the most that were added at once. */
export function shelf(streams: Map<string, readonly Event[]>, room = Number.POSITIVE_INFINITY) {
  const seen = { largest: 0, renewed: 0, room }
  const itself: ArchiveShelf = {
    streams: async () => [...streams.keys()].sort(),
    read: async (stream) => streams.get(stream) ?? [],
    readSecond: async (stream) => streams.get(stream) ?? [],
    prepare: async () => undefined,
    add: async (offered) => {
      const count = [...offered.values()].flat().length
      if (count > seen.room) throw new DOMException('full', 'QuotaExceededError')
      seen.room -= count
      seen.largest = Math.max(seen.largest, count)
      for (const [stream, events] of offered) streams.set(stream, [...(streams.get(stream) ?? []), ...events])
      return count
    },
    renewReplica: async () => {
      seen.renewed += 1
    },
  }
  return { archive: archiveOf(itself), streams, seen }
}

export const holding = (...logs: readonly (readonly Event[])[]) =>
  shelf(new Map(logs.map((events) => [events[0]?.stream ?? '', events])))

export async function fileOf(archive: Archive): Promise<Blob> {
  const answer = await archive.write('all', madeAt)
  if (!answer.ok) throw new Error(answer.refusal.code)
  return answer.value.file
}

export async function previewOf(archive: Archive, file: Blob): Promise<ArchivePreview> {
  const answer = await archive.inspect(file)
  if (!answer.ok) throw new Error(answer.refusal.code)
  return answer.value
}

/** `batches` of `each` entries. */
export function many(batches: number, each: number): readonly (readonly Event[])[] {
  return Array.from({ length: batches }, (_, index) => write(`batch:${String(index).padStart(5, '0')}`, each).events)
}

/** An entry with a letter of two bytes, and a number that can be written in two ways. */
export function accented(): readonly Event[] {
  const place = { stream: 'batch:é', replica: 'r1', id: 'é', at: '2026-03-02T09:00:00.000+01:00', by: 'RK' }
  const first = seal({ kind: 'noted-tomorrow', body: { share: 1e-7 } }, emptyTip, place)
  return [first, seal({ kind: 'noted-tomorrow', body: {} }, advance(emptyTip, first), { ...place, id: 'f' })]
}
