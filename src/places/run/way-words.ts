import { currencyText } from '../../app/currency'
import type { Format } from '../../app/format'
import { type WayWords, whyNot } from '../../app/refusals/ways-on'
import type { FinishedRow, RemedyOffer } from '../../batch/deviation'
import { nameOfShared } from '../../batch/finished-rows'
import type { BatchState } from '../../batch/state'
import type { DeviationPanel, Way } from './deviation-model'
import { bareOf, percentsOf } from './figures'

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
  if (offer.remedy === 'cost') return `Cheapest way out: a batch of ${format.massWithUnit(offer.endsUg)}.`
  const title = wayTitle({ kind: offer.remedy, feasible: offer.feasible, offer }, state, format)
  return `Cheapest way out: ${lower(title).replace(': ', ', ')}.`
}

/** What a line, foreign mass, a vessel or a limit over several lines is called. */
export function nameIn(state: BatchState, id: string): string {
  const stranger = state.unplanned.get(id)?.body.name
  if (stranger !== undefined) return stranger
  return state.plan.lines.get(id)?.material.name ?? state.plan.vessels.get(id)?.name ?? nameOfShared(state, id)
}

function lineOf(way: Way, panel: DeviationPanel, state: BatchState, format: Format, currency: string): string {
  const { offer } = way
  if (offer?.why !== undefined) return `Cannot: ${whyNot(offer.why, wordsFor(state, format)).short}`
  if (offer === undefined)
    return way.kind === 'take-out'
      ? 'Read it again once some is out. Back to plan.'
      : 'It goes to waste; this line starts at nought.'
  const total = format.massWithUnit(offer.endsUg)
  const about = offer.rows.find(({ line }) => line === panel.deviation.line)
  if (way.kind === 'accept')
    return `Ends at ${total}${about ? ` with ${percentsOf(about, format)(about.after)}` : ''}. Say why.`
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
    return ` ${whose}${percentsOf(first, format)(first.after)}, still ${outWords(first, format)}.`
  }
  return panel.consequences?.rows.some((row) => row.breaks)
    ? ' Every line back in its limits.'
    : ' Every line in its limits.'
}

const outWords = (row: FinishedRow, format: Format): string =>
  row.after > row.high
    ? `over ${bareOf(percentsOf(row, format)(row.high))}`
    : `under ${bareOf(percentsOf(row, format)(row.low))}`

/** What the sentences about a way on need from the batch. */
export const wordsFor = (state: BatchState, format: Format): WayWords => ({
  nameOf: (id) => lower(nameIn(state, id)),
  mass: (massUg) => format.massWithUnit(massUg),
  percent: (fraction) => format.percent(fraction),
})

const vesselName = (state: BatchState, id: string | undefined): string =>
  state.plan.vessels.get(id ?? '')?.name ?? 'this vessel'

const short = (text: string): string =>
  text.length <= longestLine ? text : `${text.slice(0, longestLine - 1).trimEnd()}…`

export const lower = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text
