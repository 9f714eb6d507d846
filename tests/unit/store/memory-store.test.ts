import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import * as fc from 'fast-check'
import { describe, expect, it, vi } from 'vitest'
import { seal } from '../../../src/batch/seal'
import { tipOf } from '../../../src/batch/tip'
import type { EventLog } from '../../../src/ports/event-log'
import { memoryStore } from '../../../src/store/memory-store'
import { newTablet, openPage, request, write } from './support.ts'

interface Step {
  readonly stream: string
  readonly isStale: boolean
  readonly isRepeated: boolean
  readonly kind: string
}

const steps = fc.array(
  fc.record({
    stream: fc.constantFrom('batch:a', 'batch:b', 'lot:a'),
    isStale: fc.boolean(),
    isRepeated: fc.boolean(),
    kind: fc.constantFrom('noted', 'closed'),
  }),
  { maxLength: 12 },
)

/** Does the same to any log, and tells all that can be seen of it. */
async function drive(log: EventLog, plan: readonly Step[]): Promise<unknown> {
  const seen: unknown[] = []
  log.onAppended((events, from) => seen.push([from, events.map((event) => event.id)]))
  for (const [index, { stream, isStale, isRepeated, kind }] of plan.entries()) {
    const before = (await log.read(stream)).slice(0, isStale ? -1 : undefined)
    const place = {
      stream,
      replica: 'r1',
      id: `id-${index}`,
      at: `2026-03-02T09:00:${String(index).padStart(2, '0')}.000+01:00`,
      by: 'RK',
    }
    const asked = request([seal({ kind, body: { index } }, tipOf(before, 'r1'), place)])
    seen.push(await log.append(asked))
    if (isRepeated) seen.push(await log.append(asked))
  }
  for (const stream of ['batch:a', 'batch:b', 'lot:a']) seen.push(await log.read(stream), await log.head(stream))
  seen.push(await log.heads({ family: 'batch' }), await log.heads({ family: 'batch', shelf: 'open', limit: 1 }))
  return seen
}

describe('the store in memory', () => {
  it('[S25] answers any requests as the database does', async () => {
    await fc.assert(
      fc.asyncProperty(steps, async (plan) => {
        vi.stubGlobal('indexedDB', new IDBFactory())
        const page = await openPage(newTablet())
        expect(await drive(memoryStore('r1').log, plan)).toEqual(await drive(page.store.log, plan))
      }),
      { numRuns: 40 },
    )
  })

  it('[S25] can be without a journal, a database, room, or all of them', async () => {
    const { log, setMood, receive } = memoryStore('r1')
    const moved: unknown[] = []
    log.onEntryState((ids, state) => moved.push([ids, state]))
    const { events, tip } = write('batch:a', 1)
    setMood('full')
    expect(await log.append(request(events))).toEqual({ state: 'not-saved', reason: 'STORAGE_FULL' })
    setMood('fail-database')
    expect(await log.append(request(events))).toEqual({ state: 'held' })
    setMood('fail-journal')
    expect(await log.append(request(events))).toEqual({ state: 'one-copy' })
    setMood('well')
    expect(moved).toEqual([[['batch:a/r1/0'], 'recorded']])
    receive(request(write('batch:a', 1, 'r1', tip).events))
    expect(await log.read('batch:a')).toHaveLength(2)
  })
})
