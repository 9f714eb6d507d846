import 'fake-indexeddb/auto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { IDBFactory } from 'fake-indexeddb'
import { openDB } from 'idb'
import { describe, expect, it, vi } from 'vitest'
import { isIntact } from '../../../src/batch/seal'
import type { HealReport } from '../../../src/ports/event-log'
import { databaseName, databaseVersion, migrate } from '../../../src/store/schema'
import { newTablet, openPage } from './support.ts'

interface SavedLog {
  readonly version: number
  readonly stores: readonly {
    readonly name: string
    readonly keys: readonly IDBValidKey[]
    readonly values: readonly unknown[]
  }[]
  readonly journal: Readonly<Record<string, string>>
}

const folder = new URL('../../old-logs/', import.meta.url)
const saved = readdirSync(folder)
  .filter((name) => /^version-\d+\.json$/.test(name))
  .map((name): SavedLog => JSON.parse(readFileSync(new URL(name, folder), 'utf8')))

/** A database as that version left it. */
async function restore({ version, stores }: SavedLog): Promise<void> {
  const db = await openDB(databaseName, version, {
    upgrade: (opened, oldVersion, _new, tx) =>
      migrate(opened as never, oldVersion, tx as never, () => 'unused', version),
  })
  for (const { name, keys, values } of stores) {
    const tx = db.transaction(name, 'readwrite')
    for (const [index, value] of values.entries())
      await tx.store.put(value, tx.store.keyPath === null ? keys[index] : undefined)
    await tx.done
  }
  db.close()
}

describe('saved logs of every version', () => {
  it('[S26] there is one for each version of the schema up to the present one', () => {
    const versions = Array.from({ length: databaseVersion }, (_, index) => index + 1)
    for (const version of versions)
      expect(existsSync(new URL(`version-${version}.json`, folder)), `version ${version}`).toBe(true)
  })

  for (const log of saved) {
    it(`[S26] the database of version ${log.version} opens with every entry, head, draft and its replica`, async () => {
      vi.stubGlobal('indexedDB', new IDBFactory())
      await restore(log)
      const tablet = newTablet()
      for (const [name, text] of Object.entries(log.journal))
        tablet.folder.files.set(name, new TextEncoder().encode(text))
      const { store } = await openPage(tablet)
      const reports: HealReport[] = []
      store.log.onHealed((report) => reports.push(report))
      expect(reports).toEqual([])
      const batch = await store.log.read('batch:a')
      expect(batch.map((event) => [event.n, isIntact(event)])).toEqual([0, 1, 2, 3].map((n) => [n, true]))
      expect((await store.log.heads({ family: 'formula' })).map(({ stream, count }) => [stream, count])).toEqual([
        ['formula:b', 2],
      ])
      expect(await store.drafts.read('run/batch:a/reading')).toBe('12,3')
      expect(store.log.replica).toBe(log.stores.find(({ name }) => name === 'meta')?.values[0])
    })

    it(`[S26] the journal of version ${log.version} alone brings everything back`, async () => {
      vi.stubGlobal('indexedDB', new IDBFactory())
      const tablet = newTablet()
      for (const [name, text] of Object.entries(log.journal))
        tablet.folder.files.set(name, new TextEncoder().encode(text))
      const { store } = await openPage(tablet)
      expect(await store.log.read('batch:a')).toHaveLength(4)
      expect(await store.log.read('formula:b')).toHaveLength(2)
      expect(await store.log.heldIntentions()).toMatchObject([{ id: 'h1' }])
    })
  }
})
