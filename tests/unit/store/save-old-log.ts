/**
 * Saves what the present schema and journal format leave on a tablet, for the tests of later versions:
 * `npx tsx tests/unit/store/save-old-log.ts` before either format changes. A saved log is never made again.
 */
import 'fake-indexeddb/auto'
import { writeFileSync } from 'node:fs'
import { databaseVersion } from '../../../src/store/schema.ts'
import { whole } from '../../../src/store/whole-database'
import { newTablet, openPage, request, write } from './support.ts'

const tablet = newTablet()
const first = await openPage(tablet)
const a = write('batch:a', 3)
const b = write('formula:b', 2)
for (const { events } of [a, b]) await first.store.log.append(request(events))
first.kill()
const page = await openPage(tablet)
await page.journal.merge()
await page.store.log.append(request(write('batch:a', 1, 'r1', a.tip).events))
await page.store.log.hold({
  id: 'h1',
  stream: 'batch:a',
  at: '2026-03-02T09:00:00.000+01:00',
  by: 'RK',
  intention: { kind: 'note' },
})
await page.store.drafts.write('run/batch:a/reading', '12,3')

const db = whole(await page.store.connection.get())
const stores = await Promise.all(
  [...db.objectStoreNames].map(async (name) => ({
    name,
    keys: await db.getAllKeys(name),
    values: await db.getAll(name),
  })),
)
const journal = Object.fromEntries(
  [...tablet.folder.files].map(([name, bytes]) => [name, new TextDecoder().decode(bytes)]),
)
const file = new URL(`../../old-logs/version-${databaseVersion}.json`, import.meta.url)
writeFileSync(file, `${JSON.stringify({ version: databaseVersion, stores, journal }, null, 1)}\n`, { flag: 'wx' })
process.exit(0)
