import type { Micrograms } from '../trade/mass'
import type { Lot } from './catalogue'
import type { LotFinding } from './finding'
import { msOf } from './instant'
import type { PlannedLine } from './plan'

const dayMs = 86_400_000

/**
 * Lots that should not or cannot be used. A lot that serves several lines is drawn down line by line, in the order of
 * the formula, so that the line that finds it empty is the one that is called short.
 */
export function lotFindings(
  lines: readonly PlannedLine[],
  onHand: ReadonlyMap<string, Micrograms>,
  todayIso: string,
): readonly LotFinding[] {
  const left = new Map(onHand)
  return lines.flatMap((planned): LotFinding[] => {
    const about = planned.line.id
    if (planned.lots.length === 0) return [{ code: 'NO_LOT', about }]
    return [...planned.lots.flatMap((lot) => stateFinding(about, lot, todayIso)), ...shortFinding(planned, left)]
  })
}

/** Whole days since a lot's last day; nought or less while it may be used. */
export const daysOver = ({ expires }: Lot, todayIso: string): number => daysPast(expires, todayIso)

/** Whole days since a lot was to be tested again; nought or less until then. */
const daysPastRetest = ({ retestOn }: Lot, todayIso: string): number => daysPast(retestOn, todayIso)

const daysPast = (day: string | undefined, todayIso: string): number =>
  day === undefined ? 0 : Math.round((msOf(todayIso) - msOf(day)) / dayMs)

function stateFinding(about: string, lot: Lot, todayIso: string): LotFinding[] {
  if (lot.status === 'quarantine') return [{ code: 'LOT_QUARANTINED', about, lot }]
  const days = daysOver(lot, todayIso)
  if (days > 0) return [{ code: 'LOT_EXPIRED', about, lot, daysOver: days }]
  const due = daysPastRetest(lot, todayIso)
  return due > 0 ? [{ code: 'LOT_RETEST', about, lot, daysOver: due }] : []
}

function shortFinding({ line, lots, targetUg }: PlannedLine, left: Map<string, Micrograms>): LotFinding[] {
  const leftUg = lots.reduce((sum, { id }) => sum + Math.max(left.get(id) ?? 0, 0), 0)
  let wantedUg = targetUg
  for (const { id } of lots) {
    const hereUg = Math.max(left.get(id) ?? 0, 0)
    const takenUg = Math.min(hereUg, wantedUg)
    left.set(id, hereUg - takenUg)
    wantedUg -= takenUg
  }
  return wantedUg > 0 ? [{ code: 'LOT_SHORT', about: line.id, neededUg: targetUg, leftUg }] : []
}
