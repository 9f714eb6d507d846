import { coveredBy, type NotCovered, notCovered } from './covered'
import { entriesOf, type Stamp } from './record-entries'
import type { BatchState } from './state'

/** One signature as the record shows it, with what came after it. */
export interface SignatureRow extends Stamp {
  readonly person: string
  readonly meaning: string
  readonly how?: 'pin' | 'name'
  readonly pinSetAt?: string
  readonly insteadOf?: string
  readonly reason?: string
  /** Of a second person at a step: what was looked at, and whether it was struck out since. */
  readonly looked?: { readonly step: string; readonly entry: string; readonly struck: boolean }
  /** The number of the last entry that it covers; null where that entry is not here, undefined where none is named. */
  readonly covers?: number | null
  readonly after: NotCovered
}

export function signatureRows(state: BatchState, initialsOf: (id: string) => string): readonly SignatureRow[] {
  const events = state.entries.map(({ event }) => event)
  const numbers = new Map(state.entries.map(({ event }, index) => [event.hash, index + 1]))
  const struck = new Set(state.entries.flatMap((entry) => (entry.struck ? [entry.event.id] : [])))
  return entriesOf(state, 'signed', initialsOf).map(({ event, struck: _never, ...stamp }) => {
    const { person, meaning, how, pinSetAt, insteadOf, reason, step, entry, head } = event.body
    return {
      ...stamp,
      person: initialsOf(person),
      meaning,
      ...(how === undefined ? {} : { how }),
      ...(pinSetAt === undefined ? {} : { pinSetAt }),
      ...(insteadOf === undefined ? {} : { insteadOf: initialsOf(insteadOf) }),
      ...(reason === undefined ? {} : { reason }),
      ...(step === undefined || entry === undefined ? {} : { looked: { step, entry, struck: struck.has(entry) } }),
      ...(head === undefined ? {} : { covers: head === event.parents[0] ? (numbers.get(head) ?? null) : null }),
      after: step === undefined ? notCovered(coveredBy(event, events), events) : { entries: 0, strikes: 0 },
    }
  })
}
