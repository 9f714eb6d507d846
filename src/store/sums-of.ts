import type { Database } from './database'
import { firstRows, firstRun } from './first-rows'
import type { StreamSum } from './journal-port'
import { untilIdle } from './until-idle'

const nextRuns = 1_000

/** The sums of all streams by the database's heads, in runs between which the page can draw. */
export async function sumsOf(db: Database, first = firstRows(db)): Promise<readonly StreamSum[]> {
  const sums: StreamSum[] = []
  let rows = await first
  for (let most = firstRun; ; most = nextRuns) {
    for (const { stream, count, sum } of rows) sums.push({ stream, count, sum })
    const last = rows.at(-1)
    if (!last || rows.length < most) return sums
    await untilIdle(100)
    rows = await db.getAll('heads', IDBKeyRange.lowerBound(last.stream, true), nextRuns)
  }
}
