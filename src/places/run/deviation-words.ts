import type { Format } from '../../app/format'
import type { FinishedRow, RemedyOffer } from '../../batch/deviation'
import type { BatchState } from '../../batch/state'
import { nameOfLine } from '../../batch/wording'
import { type DeviationPanel, takenOutUg, type Way } from './deviation-model'
import type { Draft } from './draft'
import type { Reckoner } from './typed'

/** A consequence is read in a glance: longer lines are cut to this. */
const longestLine = 52

export function wayTitle(way: Way, format: Format): string {
  switch (way.kind) {
    case 'take-out':
      return 'Take some out'
    case 'discard-cup':
      return 'Discard, weigh again'
    case 'accept':
      return 'Accept as it is'
    case 'scale':
      return way.offer?.feasible ? `Scale the rest to ${format.massWithUnit(way.offer.totalUg)}` : 'Scale the rest'
    case 'qs':
      return 'Let the water give way'
    case 'discard':
      return 'Discard and start this vessel again'
  }
}

/** The consequence in one line, or why the way cannot be gone. */
export function wayLine(way: Way, panel: DeviationPanel, state: BatchState, format: Format): string {
  return short(lineOf(way, panel, state, format))
}

function lineOf(way: Way, panel: DeviationPanel, state: BatchState, format: Format): string {
  const { offer } = way
  if (offer?.why !== undefined) return `Cannot: ${whyNot(offer.why, state, format)}`
  if (offer === undefined)
    return way.kind === 'take-out'
      ? 'Read it again once some is out. Back to plan.'
      : 'It goes to waste; this line starts at nought.'
  const total = format.massWithUnit(offer.totalUg)
  const about = offer.rows.find(({ line }) => line === panel.deviation.line)
  if (way.kind === 'accept') return `Ends at ${total}${about ? ` with ${format.percent(about.after)}` : ''}. Say why.`
  const broken = offer.rows.filter((row) => row.breaks)
  const first = broken[0]
  const limits = first
    ? ` ${first === about ? '' : `${first.name} `}${format.percent(first.after)}, still ${outWords(first, format)}.`
    : panel.consequences?.rows.some((row) => row.breaks)
      ? ' Every line back in its limits.'
      : ' Every line in its limits.'
  if (way.kind === 'qs') return `Stays ${total}.${limits}`
  const count = offer.targets.length
  return `${count} ${count === 1 ? 'target changes' : 'targets change'}.${limits}`
}

const outWords = (row: FinishedRow, format: Format): string =>
  row.after > row.high ? `over ${bare(row.high, format)}` : `under ${bare(row.low, format)}`

function whyNot(why: NonNullable<RemedyOffer['why']>, state: BatchState, format: Format): string {
  switch (why.code) {
    case 'VESSEL_TOO_SMALL':
      return `needs ${format.massWithUnit(why.neededUg)}, the vessel holds less.`
    case 'STOCK_TOO_SHORT':
      return `${lower(nameOfLine(state.header, why.id))} runs out.`
    case 'LINE_LOCKED':
      return `needs ${format.massWithUnit(why.neededUg)} ${lower(nameOfLine(state.header, why.id))}, too late.`
    case 'LINE_NOT_IN_FORMULA':
      return 'what was added is not in the formula.'
    case 'NO_QS_LINE':
      return 'no line makes up to 100 %.'
    case 'QS_ALREADY_PAST':
      return 'too little of the water is left to give way.'
    default:
      return 'the limits of the lines contradict each other.'
  }
}

/** Left so, how the product would end, and which limit that passes. */
export function consequenceWords(panel: DeviationPanel, format: Format): string {
  const { deviation, consequences } = panel
  const row = consequences?.rows.find(({ line }) => line === deviation.line)
  if (deviation.inCup && row === undefined) return 'Nothing of it is in the batch yet.'
  if (row === undefined) return ''
  const ends = `Left so, it ends at ${format.percent(row.after)} ${lower(row.name)}`
  if (!row.breaks) return `${ends}, inside ${rangeOf(row, format)}.`
  const others = (consequences?.rows.filter(({ breaks }) => breaks).length ?? 1) - 1
  const more = others > 0 ? ` ${others} more ${others === 1 ? 'line is' : 'lines are'} out.` : ''
  return `${ends}; ${limitOwner(row)} ${row.after > row.high ? 'stops at' : 'starts at'} ${format.percent(row.after > row.high ? row.high : row.low)}.${more}`
}

const rangeOf = (row: FinishedRow, format: Format): string => `${bare(row.low, format)}–${format.percent(row.high)}`

function limitOwner({ from }: FinishedRow): string {
  switch (from) {
    case 'formula':
      return 'the formula'
    case 'use level':
      return 'its use level'
    case 'tolerance':
      return 'its tolerance'
  }
}

/** "at most 3.60", "at least 0.38": the limit that a row is nearest to. */
export function limitWords(row: FinishedRow, format: Format): string {
  const nearHigh = row.after >= (row.low + row.high) / 2
  const bound = bare(nearHigh ? row.high : row.low, format)
  return `${nearHigh ? 'at most' : 'at least'} ${bound}`
}

/** What the vessel that the batch ends in can hold. */
export function roomWords(state: BatchState, panel: DeviationPanel, format: Format): string {
  const planned = state.plan.byId.get(panel.deviation.step)
  const vessel = planned && state.plan.vessels.get(endVessel(state, planned.step.vessel))
  if (vessel?.capacityUg === undefined) return ''
  return `room for ${format.mass(vessel.capacityUg, 1_000_000)}`
}

/** Where the contents of a vessel end by the plan, through every tipping and combining. */
function endVessel(state: BatchState, from: string): string {
  let at = from
  for (const { step } of state.plan.steps) {
    const emptied = step.kind === 'charge' ? step.cup : step.kind === 'combine' ? step.from : undefined
    if (emptied === at) at = step.vessel
  }
  return at
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
      const label = `Accept ${format.massWithUnit(netUg, stepUg)}`
      return { label, sub: silent ? 'say why first' : reason, closed: silent }
    }
    case 'scale': {
      const count = chosen.offer?.targets.length ?? 0
      const sub = `${count} ${count === 1 ? 'target changes' : 'targets change'}, the old ones stay legible`
      return { label: `Make ${format.massWithUnit(chosen.offer?.totalUg ?? 0)}`, sub, closed: false }
    }
    case 'qs':
      return {
        label: 'Let the water give way',
        sub: `stays ${format.massWithUnit(chosen.offer?.totalUg ?? 0)}`,
        closed: false,
      }
    case 'discard':
      return { label: 'Discard this vessel', closed: false }
  }
}

/** The figure of a percentage alone. */
export const bare = (fraction: number, format: Format): string => format.percent(fraction).replace(/\s*%$/, '')

const short = (text: string): string =>
  text.length <= longestLine ? text : `${text.slice(0, longestLine - 1).trimEnd()}…`

const lower = (text: string): string => (/^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text)
