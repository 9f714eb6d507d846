import { currencyText } from '../../app/currency'
import type { Format } from '../../app/format'
import type { Lot } from '../../batch/catalogue'
import type { FinishedRow, RemedyOffer } from '../../batch/deviation'
import { spareOf } from '../../batch/finished-rows'
import { isKnown } from '../../batch/kinds'
import { lastVessel } from '../../batch/remedy-problem'
import type { BatchState, DeviationState } from '../../batch/state'
import type { Micrograms } from '../../trade/mass'
import type { RankReason } from '../../trade/remedy-rank'
import { type DeviationPanel, takenOutUg } from './deviation-model'
import type { Draft } from './draft'
import { bareOf, decimalsOf, percentsOf } from './figures'
import type { Reckoner } from './typed'
import { lower } from './way-words'

/** Left so, how the product would end, and which limit that passes. */
export function consequenceWords(panel: DeviationPanel, state: BatchState, format: Format): string {
  const { deviation, consequences } = panel
  if (deviation.cause === 'lot') return barredWords(state, deviation, format)
  const row = consequences?.rows.find(({ line }) => line === deviation.line)
  if (deviation.inCup && row === undefined) return 'Nothing of it is in the batch yet.'
  if (row === undefined) return ''
  const percent = percentsOf(row, format)
  const ends = `Left so, it ends at ${percent(row.after)} ${lower(row.name)}`
  const inside = row.from === 'none' ? '' : `, inside ${bareOf(percent(row.low))}–${percent(row.high)}`
  const others = (consequences?.rows ?? []).filter((each) => each.breaks && each !== row).length
  const more =
    others > 0 ? ` ${others} ${row.breaks ? 'more ' : 'other '}${others === 1 ? 'line is' : 'lines are'} out.` : ''
  if (!row.breaks) return `${ends}${inside}.${more}`
  const [side, limit] = row.after > row.high ? ['stops at', row.high] : ['starts at', row.low]
  return `${ends}; ${limitOwner(row)} ${side} ${percent(limit)}.${more}`
}

/** Why the lot was not to be used, as far as its own papers say. */
export function barredWords(state: BatchState, deviation: DeviationState, format: Format): string {
  const lot = lotOfDeviation(state, deviation)
  if (lot === undefined) return ''
  if (lot.status === 'quarantine')
    return `Lot ${lot.code} has not been released. The mass and the sums stay as they are.`
  const until = lot.expires === undefined ? '' : ` was good to ${format.date(lot.expires)}`
  return `Lot ${lot.code}${until}. The mass and the sums stay as they are.`
}

/** The lot that a weighing was said to come from in the end. */
export function lotOfDeviation(state: BatchState, { line, entry }: DeviationState): Lot | undefined {
  const event = state.entries.findLast(({ event: { id } }) => id === entry)?.event
  const lot = event && isKnown(event) && event.kind === 'lot-corrected' ? event.body.lot : undefined
  return state.plan.lines.get(line)?.lots.find(({ id }) => id === lot)
}

function limitOwner({ from }: FinishedRow): string {
  switch (from) {
    case 'formula':
      return 'the formula'
    case 'use level':
      return 'its use level'
    case 'tolerance':
      return 'its tolerance'
    case 'shared':
      return 'the limit over several lines'
    case 'none':
      return 'nothing'
  }
}

/** A limit, and what is left to it: "≤ 3.60", "spare 0.10". */
export interface LimitWords {
  readonly limit: string
  readonly spare: string
}

/** The limit that a row is nearest to. */
export function limitWords(row: FinishedRow, format: Format): LimitWords {
  if (row.from === 'none' || (row.low <= 0 && row.high >= 1)) return { limit: 'no limit stated', spare: '' }
  const figure = bareOf(format.percent(Math.abs(spareOf(row)), decimalsOf(row)))
  return { limit: boundWords(row, format), spare: `${row.breaks ? 'past by' : 'spare'} ${figure}` }
}

/** The limit alone, for a narrow column: "≤ 3.60". */
export const boundWords = (row: FinishedRow, format: Format): string =>
  `${nearHigh(row) ? '≤' : '≥'} ${bareOf(percentsOf(row, format)(nearHigh(row) ? row.high : row.low))}`

const nearHigh = ({ after, low, high }: FinishedRow): boolean => high - after <= after - low

/** What the vessel that the batch ends in can hold, or its stirrer moves, and what is left to it at this size. */
export function roomWords(state: BatchState, endsUg: Micrograms, format: Format): LimitWords | null {
  const { capacityUg, stirsUg } = lastVessel(state) ?? {}
  const isStirrer = stirsUg !== undefined && stirsUg.max < (capacityUg ?? Number.POSITIVE_INFINITY)
  const mostUg = isStirrer ? stirsUg.max : capacityUg
  if (mostUg === undefined) return null
  const spareUg = mostUg - endsUg
  return {
    limit: `${isStirrer ? 'stirs' : 'room'} ${format.mass(mostUg, 1_000_000)}`,
    spare: `${spareUg < 0 ? 'past by' : 'spare'} ${format.mass(Math.abs(spareUg), 1_000_000)}`,
  }
}

/** What a way's material comes to from now on; null where a price is missing. */
export function costWords(offer: RemedyOffer, currency: string, format: Format): string | null {
  const { cost } = offer.merits
  return cost === null ? null : currencyText({ sum: cost, unpriced: 0 }, currency, format)
}

export interface WayAct {
  readonly label: string
  readonly sub?: string
  readonly closed: boolean
}

/** What the filled button says, and whether it may be pressed yet. */
export function actOfWay(
  panel: DeviationPanel,
  state: BatchState,
  draft: Draft,
  reckoner: Reckoner,
  format: Format,
): WayAct {
  const { chosen, needsReason, reason, deviation } = panel
  if (chosen === null) return { label: 'No way on', closed: true }
  const silent = needsReason && reason.trim() === ''
  const stepUg = state.plan.byId.get(deviation.step)?.line?.balance.stepUg
  switch (chosen.kind) {
    case 'take-out': {
      const out = takenOutUg(state, deviation.step, draft, reckoner)
      if (out.kind !== 'number') return { label: 'Take some out', sub: 'type what it reads now', closed: true }
      return { label: `Record ${format.massWithUnit(out.value, stepUg)} taken out`, closed: false }
    }
    case 'discard-cup':
      return { label: 'Discard the cup', sub: silent ? 'say why first' : 'then weigh again', closed: silent }
    case 'accept': {
      const netUg = state.steps.get(deviation.step)?.netUg ?? 0
      const label = deviation.cause ? 'Accept it as it is' : `Accept ${format.massWithUnit(netUg, stepUg)}`
      return { label, sub: silent ? 'say why first' : reason, closed: silent }
    }
    case 'qs':
      return {
        label: 'Let the water give way',
        sub: `stays ${format.massWithUnit(chosen.offer?.endsUg ?? 0)}`,
        closed: false,
      }
    case 'discard':
      return {
        label: `Discard ${format.massWithUnit(chosen.offer?.waste?.massUg ?? 0)}`,
        sub: silent ? 'say why first' : 'then do it again',
        closed: silent,
      }
    default: {
      const count = chosen.offer?.targets.length ?? 0
      const sub = `${count} ${count === 1 ? 'target changes' : 'targets change'}`
      return { label: `Make ${format.massWithUnit(chosen.offer?.endsUg ?? 0)}`, sub, closed: false }
    }
  }
}

/** What stands over the ways on. */
export function questionWords({ deviation }: DeviationPanel): string {
  if (deviation.inCup && deviation.cause !== 'lot') return 'It is still in the cup. Choose a way on.'
  switch (deviation.cause) {
    case 'forgotten':
      return 'Its step has passed. Choose a way on.'
    case 'loss':
      return 'It is gone. Choose a way on.'
    case 'lot':
      return 'That lot was not to be used. Choose a way on.'
    default:
      return 'It cannot come out. Choose a way on.'
  }
}

/** By what the ways on stand in their order. */
export const rankingWords =
  'In order: inside all limits, then the least change to the formula, the least material, the least cost.'

/** Why the chosen way stands before the next one. */
export function orderWords(reason: RankReason | undefined): string {
  switch (reason) {
    case 'inside-limits':
      return 'Before the next: it breaks fewer limits.'
    case 'least-change':
      return 'Before the next: it changes the formula less.'
    case 'least-material':
      return 'Before the next: it takes less material.'
    case 'least-cost':
      return 'Before the next: it costs less.'
    default:
      return ''
  }
}
