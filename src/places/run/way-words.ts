import { currencyText } from '../../app/currency'
import type { Format } from '../../app/format'
import type { FinishedRow, RemedyOffer } from '../../batch/deviation'
import { nameOfShared } from '../../batch/finished-rows'
import type { BatchState } from '../../batch/state'
import { nameOfLine } from '../../batch/wording'
import type { DeviationPanel, Way } from './deviation-model'

/** A consequence is read in a glance: longer lines are cut to this. */
const longestLine = 52

export function wayTitle(way: Way, state: BatchState, format: Format): string {
  const total = way.offer?.feasible ? format.massWithUnit(way.offer.endsUg) : null
  const to = (words: string, joint: string): string => (total === null ? words : `${words}${joint}${total}`)
  switch (way.kind) {
    case 'take-out':
      return 'Take some out'
    case 'discard-cup':
      return 'Discard, weigh again'
    case 'accept':
      return 'Accept as it is'
    case 'scale':
      // More goes in than the batch comes to: part of it is for what was lost.
      return way.offer?.feasible && way.offer.totalUg > way.offer.endsUg
        ? 'Put in again what is gone'
        : to('Scale the rest', ' to ')
    case 'smaller':
      return to('Make less', ': ')
    case 'extra':
      return to('Make a little more', ': ')
    case 'qs':
      return 'Let the water give way'
    case 'departure':
      return 'Stay as near as can be'
    case 'cost':
      return to('Spend the least', ': ')
    case 'discard':
      return `Start again: ${lower(vesselName(state, way.offer?.waste?.vessel))}`
  }
}

/** The consequence in one line, or why the way cannot be gone. */
export function wayLine(way: Way, panel: DeviationPanel, state: BatchState, format: Format, currency = ''): string {
  return short(lineOf(way, panel, state, format, currency))
}

/** "Cheapest way out: make a little more, 517.23 g." for a reading that is not recorded yet. */
export function wayOut(offer: RemedyOffer, state: BatchState, format: Format): string {
  const title = wayTitle({ kind: offer.remedy, feasible: offer.feasible, offer }, state, format)
  return `Cheapest way out: ${lower(title).replace(': ', ', ')}.`
}

/** What a line, foreign mass or a limit over several lines is called. */
export function nameIn(state: BatchState, id: string): string {
  const stranger = state.unplanned.get(id)?.body.name
  if (stranger !== undefined) return stranger
  return state.plan.lines.has(id) ? nameOfLine(state.header, id) : nameOfShared(state, id)
}

function lineOf(way: Way, panel: DeviationPanel, state: BatchState, format: Format, currency: string): string {
  const { offer } = way
  if (offer?.why !== undefined) return `Cannot: ${whyNot(offer.why, state, format)}`
  if (offer === undefined)
    return way.kind === 'take-out'
      ? 'Read it again once some is out. Back to plan.'
      : 'It goes to waste; this line starts at nought.'
  const total = format.massWithUnit(offer.endsUg)
  const about = offer.rows.find(({ line }) => line === panel.deviation.line)
  if (way.kind === 'accept') return `Ends at ${total}${about ? ` with ${format.percent(about.after)}` : ''}. Say why.`
  if (way.kind === 'discard') return wasteWords(offer, format, currency)
  const limits = limitsAfter(offer, panel, about, format)
  if (way.kind === 'qs' || way.kind === 'departure') return `Stays ${total}.${limits}`
  if (way.kind === 'extra' || way.kind === 'cost')
    return `${format.massWithUnit(offer.totalUg - state.totalUg)} more.${limits}`
  const count = offer.targets.length
  return `${count} ${count === 1 ? 'target changes' : 'targets change'}.${limits}`
}

function wasteWords({ waste }: RemedyOffer, format: Format, currency: string): string {
  if (waste === undefined) return ''
  const cost = waste.cost === null ? '' : `, ${currencyText({ sum: waste.cost, unpriced: 0 }, currency, format)}`
  return `Lose ${format.massWithUnit(waste.massUg)}${cost}. Back to plan.`
}

function limitsAfter(
  offer: RemedyOffer,
  panel: DeviationPanel,
  about: FinishedRow | undefined,
  format: Format,
): string {
  const first = offer.rows.find((row) => row.breaks)
  if (first) {
    const whose = first === about ? '' : `${first.name} `
    return ` ${whose}${format.percent(first.after)}, still ${outWords(first, format)}.`
  }
  return panel.consequences?.rows.some((row) => row.breaks)
    ? ' Every line back in its limits.'
    : ' Every line in its limits.'
}

const outWords = (row: FinishedRow, format: Format): string =>
  row.after > row.high ? `over ${bare(row.high, format)}` : `under ${bare(row.low, format)}`

function whyNot(why: NonNullable<RemedyOffer['why']>, state: BatchState, format: Format): string {
  const name = (id: string): string => lower(nameIn(state, id))
  switch (why.code) {
    case 'VESSEL_TOO_SMALL':
      return `needs ${format.massWithUnit(why.neededUg)}, vessel holds ${format.massWithUnit(why.capacityUg)}.`
    case 'STOCK_TOO_SHORT':
      return `${name(why.id)} runs out.`
    case 'LINE_LOCKED':
      return `needs ${format.massWithUnit(why.neededUg)} ${name(why.id)}, too late.`
    case 'LINE_NOT_IN_FORMULA':
      return 'what was added is not in the formula.'
    case 'NO_QS_LINE':
      return 'no line makes up to 100 %.'
    case 'QS_ALREADY_PAST':
      return 'too little of the water is left to give way.'
    case 'LINES_CONFLICT':
      if (why.allows.limit === 'capacity')
        return `needs ${format.massWithUnit(why.neededUg)}, vessel holds ${format.massWithUnit(why.allowedUg)}.`
      return why.allows.limit === 'locked'
        ? `no more ${name(why.allows.id)} can go in.`
        : `${name(why.allows.id)} runs out.`
    case 'MAXIMUMS_BELOW_TOTAL':
      return why.allLocked ? 'nothing may be added: all lines are closed.' : 'too little can still go in to dilute it.'
    case 'MINIMUMS_EXCEED_TOTAL':
      return 'the least of all lines is too much already.'
    case 'RANGE_CONTRADICTORY':
      return `${name(why.id)}: its least is above its most.`
    case 'COST_UNKNOWN':
      return `the price of ${name(why.id)} is not known.`
    case 'SHARED_LIMITS_CONFLICT':
      return `${name(why.ids[0] ?? '')} cannot be kept.`
    case 'CLOSURE_CONFLICT':
      return 'the limits of the lines contradict each other.'
    case 'NOT_SOLVED':
      return 'balances cannot show it within the limits.'
  }
}

const vesselName = (state: BatchState, id: string | undefined): string =>
  state.plan.vessels.get(id ?? '')?.name ?? 'this vessel'

/** The figure of a percentage alone. */
export const bare = (fraction: number, format: Format): string => format.percent(fraction).replace(/\s*%$/, '')

const short = (text: string): string =>
  text.length <= longestLine ? text : `${text.slice(0, longestLine - 1).trimEnd()}…`

export const lower = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text
