import canonicalize from 'canonicalize'
import type { Event } from '../../batch/event'
import { hashOf } from '../../batch/seal'

/**
 * The archive file that was packed for the build, to the letter: shared pieces are put back, hashes and parents are
 * worked out again. A file that was not packed (its second line is no table) comes back as it is.
 */
export function unpackArchive(text: string): string {
  const [header = '', second = '', ...lines] = text.trimEnd().split('\n')
  if (!second.startsWith('[')) return text
  const table = JSON.parse(second) as readonly unknown[]
  const before = new Map<string, string>()
  const entries = lines.map((line) => {
    const entry = expand(JSON.parse(line), table) as Omit<Event, 'hash' | 'parents'> & Partial<Pick<Event, 'parents'>>
    const last = before.get(entry.stream)
    const unhashed = { ...entry, parents: entry.parents ?? (last === undefined ? [] : [last]) }
    const hash = hashOf(unhashed)
    before.set(entry.stream, hash)
    return canonicalize({ ...unhashed, hash })
  })
  return [header, ...entries, ''].join('\n')
}

function expand(value: unknown, table: readonly unknown[]): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) return value.map((each) => expand(each, table))
  if ('$shared' in value && typeof value.$shared === 'number') return expand(table[value.$shared], table)
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, expand(each, table)]))
}
