import { msOf } from './instant'
import { type BatchEvent, isKnown, type Kind } from './kinds'
import type { BatchState, Entry } from './state'

/** Who wrote an entry and when: `by` are initials, `atMs` is when it happened, `writtenAtMs` where it was written late. */
export interface Stamp {
  readonly entry: string
  readonly atMs: number
  readonly by: string
  readonly writtenAtMs?: number
}

export interface Struck {
  readonly reason: string
  readonly atMs: number
  readonly by: string
}

export type RecordEntry<K extends Kind> = Stamp & {
  readonly event: Extract<BatchEvent, { kind: K }>
  readonly struck?: Struck
}

/** Every entry of one kind in the order of the log, struck ones too. */
export function entriesOf<K extends Kind>(
  state: BatchState,
  kind: K,
  initialsOf: (id: string) => string,
): readonly RecordEntry<K>[] {
  return state.entries.flatMap((entry) => {
    const { event } = entry
    return isOfKind(event, kind) ? [{ ...stampOf(entry, initialsOf), ...struckOf(entry, initialsOf), event }] : []
  })
}

export function stampOf({ event }: Entry, initialsOf: (id: string) => string): Stamp {
  const writtenAtMs = msOf(event.at)
  const atMs = event.occurredAt === undefined ? writtenAtMs : msOf(event.occurredAt)
  return { entry: event.id, atMs, by: initialsOf(event.by), ...(atMs === writtenAtMs ? {} : { writtenAtMs }) }
}

/** The strike-out of an entry, to be spread into its row; nothing where it stands. */
export function struckOf({ struck }: Entry, initialsOf: (id: string) => string): { readonly struck?: Struck } {
  if (!struck) return {}
  return { struck: { reason: struck.reason, atMs: struck.atMs, by: initialsOf(struck.by) } }
}

const isOfKind = <K extends Kind>(event: Entry['event'], kind: K): event is Extract<BatchEvent, { kind: K }> =>
  isKnown(event) && event.kind === kind
