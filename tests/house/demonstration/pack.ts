/** Makes the demonstration's batches small for the build: what they share is written once, what can be worked out is left out. */
import type { Event } from '../../../src/batch/event.ts'
import { hashOf } from '../../../src/batch/seal.ts'

/** Shorter pieces than this are not worth a place in the table: gzip finds them. */
const leastShared = 120

/**
 * An archive file (header line, entries) as header line, table line, entries. An object or list that stands there more
 * than once is in the table, and `{"$shared":n}` stands in its place; `hash`, and `parents` where they are the entry
 * before, are left out. `unpackArchive` gives back the same file to the letter.
 */
export const packArchive = (text: string): string => {
  const [header = '', ...lines] = text.trimEnd().split('\n')
  const before = new Map<string, string>()
  const entries = lines.map((line) => withoutHashes(JSON.parse(line) as Event, before))
  const times = new Map<string, number>()
  for (const entry of entries) count(entry, times)
  const places = new Map<string, number>()
  const table: unknown[] = []
  const shorten = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null) return value
    const own = JSON.stringify(value)
    if (own.length < leastShared || (times.get(own) ?? 0) < 2) return inner(value)
    let place = places.get(own)
    if (place === undefined) {
      const shortened = inner(value)
      place = table.push(shortened) - 1
      places.set(own, place)
    }
    return { $shared: place }
  }
  const inner = (value: object): unknown =>
    Array.isArray(value)
      ? value.map(shorten)
      : Object.fromEntries(Object.entries(value).map(([key, each]) => [key, shorten(each)]))
  const short = entries.map((entry) => JSON.stringify(inner(entry)))
  return [header, JSON.stringify(table), ...short, ''].join('\n')
}

const withoutHashes = (event: Event, before: Map<string, string>): object => {
  const { hash, parents, ...rest } = event
  if (hashOf(event) !== hash) throw new Error(`The demonstration's entry ${event.id} is not whole.`)
  const last = before.get(event.stream)
  before.set(event.stream, hash)
  const follows = parents.length === (last === undefined ? 0 : 1) && parents[0] === last
  return follows ? rest : { ...rest, parents }
}

const count = (value: unknown, times: Map<string, number>): void => {
  if (typeof value !== 'object' || value === null) return
  const own = JSON.stringify(value)
  if (own.length < leastShared) return
  times.set(own, (times.get(own) ?? 0) + 1)
  for (const each of Object.values(value)) count(each, times)
}
