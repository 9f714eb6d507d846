import type { Lot } from '../../batch/catalogue'
import type { Micrograms } from '../../trade/mass'

export type LotTrouble = 'expired' | 'quarantine' | 'used-up' | 'short'

export interface LotChoice {
  readonly lot: Lot
  /** Null until stock has been counted. */
  readonly onHandUg: Micrograms | null
  readonly trouble: LotTrouble | null
}

/**
 * The lots of one material in the order a store would hand them out: usable ones first, the one that expires or came
 * in earliest leading; what is called out stands after them with its trouble.
 */
export function lotChoices(
  lots: readonly Lot[],
  onHand: ReadonlyMap<string, Micrograms> | null,
  neededUg: Micrograms,
  todayIso: string,
): readonly LotChoice[] {
  const choices = lots.map((lot): LotChoice => {
    const onHandUg = onHand?.get(lot.id) ?? null
    return { lot, onHandUg, trouble: troubleOf(lot, onHandUg, neededUg, todayIso) }
  })
  return choices.sort((a, b) => rank(a) - rank(b) || (ageKey(a.lot) < ageKey(b.lot) ? -1 : 1))
}

function troubleOf(lot: Lot, onHandUg: Micrograms | null, neededUg: Micrograms, todayIso: string): LotTrouble | null {
  if (lot.status === 'quarantine') return 'quarantine'
  if (lot.status === 'used-up') return 'used-up'
  if (lot.expires !== undefined && lot.expires < todayIso) return 'expired'
  return onHandUg !== null && onHandUg < neededUg ? 'short' : null
}

/** A short lot is still usable for a part weighing. */
const ranks: Readonly<Record<LotTrouble, number>> = { short: 1, expired: 2, quarantine: 3, 'used-up': 4 }
const rank = ({ trouble }: LotChoice): number => (trouble === null ? 0 : ranks[trouble])

const ageKey = (lot: Lot): string => `${lot.expires ?? '9999'} ${lot.receivedOn ?? '9999'} ${lot.code}`
