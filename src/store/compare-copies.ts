import type { JournalTable, StreamSum } from './journal-port'

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
