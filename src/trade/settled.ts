import type { PhRecord } from './acidity'

/** Two readings that cannot both be right. */
export interface Contradiction {
  readonly before: PhRecord
  readonly after: PhRecord
  /** differ: nothing was added between them · against: the pH went away from where the adjuster takes it */
  readonly how: 'differ' | 'against'
}

/** Three standard deviations of the difference of two readings that are each good to 0.04. */
const contradictingPh = 0.17

/**
 * The readings to go by, one for each amount of adjuster: the last, since a meter settles. A contradiction is told where
 * the latest reading makes one; a second reading that agrees with it settles the matter.
 */
export function settledRecords(
  records: readonly PhRecord[],
  kind: 'acid' | 'base',
): { readonly records: readonly PhRecord[]; readonly contradiction: Contradiction | null } {
  const settled = records.filter((record, index) => records[index + 1]?.addedUg !== record.addedUg)
  const last = records.at(-1)
  const before = records.at(-2)
  if (last === undefined || before === undefined) return { records: settled, contradiction: null }
  const moved = last.ph - before.ph
  if (before.addedUg === last.addedUg) {
    const differ = Math.abs(moved) > contradictingPh
    return { records: settled, contradiction: differ ? { before, after: last, how: 'differ' } : null }
  }
  const against = kind === 'acid' ? moved > contradictingPh : moved < -contradictingPh
  return { records: settled, contradiction: against ? { before, after: last, how: 'against' } : null }
}
