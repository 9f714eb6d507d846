import type { Database } from './database'
import type { JournalTable, StreamSum } from './journal-port'

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

/** Names of the streams of which the two copies hold different sets of entries. */
export function differences(one: readonly StreamSum[], other: readonly StreamSum[]): readonly string[] {
  const rest = new Map(one.map((row) => [row.stream, row]))
  const found: string[] = []
  for (const row of other) {
    const twin = rest.get(row.stream)
    rest.delete(row.stream)
    if (twin?.count !== row.count || twin.sum !== row.sum) found.push(row.stream)
  }
  return [...found, ...rest.keys()]
}

/** True where both copies hold the same entries and no line of the journal has to be told of: there is nothing to heal. */
export const areEqual = (sums: readonly StreamSum[], { streams, torn, damaged }: JournalTable): boolean =>
  torn === 0 && damaged === 0 && differences(sums, streams).length === 0
