import type { App, Batches } from '../../app/app'
import type { Formula } from '../../batch/formula'
import { isoOf } from '../../batch/iso-of'
import type { BatchSummary } from '../../batch/summary'

const page = 100

/** The next running number of a formula: one more than the highest that any batch of it carries. */
export async function nextNumber(batches: Batches, formula: Formula, clock: App['clock']): Promise<number> {
  let highest = highestOf(batches.inHand.value, formula)
  let before: string | undefined
  for (;;) {
    const rows: readonly BatchSummary[] = await batches.finished(page, before)
    const found = highestOf(rows, formula)
    highest = Math.max(highest, found)
    const last = rows.at(-1)
    // Numbers rise with time, so that the newest page with a batch of this formula holds its highest.
    if (found > 0 || rows.length < page || !last) return highest + 1
    const next = isoOf(last.touchedAtMs, clock.offsetMinutes())
    if (next === before) return highest + 1
    before = next
  }
}

/** E.g. QW-LOT-01-041. */
export const batchCode = (formula: Formula, number: number): string => `${formula.code}-${padded(number)}`

/** What chips say, e.g. Lotion 041. */
export const shortName = (formula: Formula, number: number): string => `${formula.nickname} ${padded(number)}`

const padded = (number: number): string => String(number).padStart(3, '0')

function highestOf(rows: readonly BatchSummary[], formula: Formula): number {
  return rows.reduce((highest, { formulaId, code }) => {
    if (formulaId !== formula.id) return highest
    return Math.max(highest, Number(/-(\d+)$/.exec(code)?.[1] ?? 0))
  }, 0)
}
