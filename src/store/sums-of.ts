import type { Database } from './database'
import type { StreamSum } from './journal-port'

/** The sums of all streams by the database's heads, in runs that leave the page time between them. */
export async function sumsOf(db: Database): Promise<readonly StreamSum[]> {
  const sums: StreamSum[] = []
  for (let range: IDBKeyRange | null = null; ; ) {
    const rows = await db.getAll('heads', range, 1_000)
    for (const { stream, count, sum } of rows) sums.push({ stream, count, sum })
    const last = rows.at(-1)
    if (!last || rows.length < 1_000) return sums
    range = IDBKeyRange.lowerBound(last.stream, true)
  }
}
