import type { Format } from '../../app/format'
import type { Lot } from '../../batch/catalogue'
import type { FinishedRow } from '../../batch/deviation'
import { isKnown } from '../../batch/kinds'
import { endVessel } from '../../batch/remedy-problem'
import type { BatchState, DeviationState } from '../../batch/state'
import type { RankReason } from '../../trade/remedy-rank'
import { type DeviationPanel, takenOutUg } from './deviation-model'
import type { Draft } from './draft'
import type { Reckoner } from './typed'
import { bare, lower } from './way-words'

/** Left so, how the product would end, and which limit that passes. */
export function consequenceWords(panel: DeviationPanel, state: BatchState, format: Format): string {
  const { deviation, consequences } = panel
  if (deviation.cause === 'lot') return barredWords(state, deviation, format)
  const row = consequences?.rows.find(({ line }) => line === deviation.line)
  if (deviation.inCup && row === undefined) return 'Nothing of it is in the batch yet.'
  if (row === undefined) return ''
  const ends = `Left so, it ends at ${format.percent(row.after)} ${lower(row.name)}`
  const inside = row.from === 'none' ? '' : `, inside ${rangeOf(row, format)}`
  const others = (consequences?.rows ?? []).filter((each) => each.breaks && each !== row).length
  const more =
    others > 0 ? ` ${others} ${row.breaks ? 'more ' : 'other '}${others === 1 ? 'line is' : 'lines are'} out.` : ''
  if (!row.breaks) return `${ends}${inside}.${more}`
  return `${ends}; ${limitOwner(row)} ${row.after > row.high ? 'stops at' : 'starts at'} ${format.percent(row.after > row.high ? row.high : row.low)}.${more}`
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

const rangeOf = (row: FinishedRow, format: Format): string => `${bare(row.low, format)}–${format.percent(row.high)}`

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

/** "at most 3.60", "at least 0.38": the limit that a row is nearest to. */
export const limitWords = (row: FinishedRow, format: Format): string =>
  `${nearHigh(row) ? 'at most' : 'at least'} ${nearest(row, format)}`

/** The same in a narrow column: "≤ 3.60". */
export const boundWords = (row: FinishedRow, format: Format): string =>
  `${nearHigh(row) ? '≤' : '≥'} ${nearest(row, format)}`

const nearHigh = ({ after, low, high }: FinishedRow): boolean => after >= (low + high) / 2

const nearest = (row: FinishedRow, format: Format): string => bare(nearHigh(row) ? row.high : row.low, format)

/** What the vessel that the batch ends in can hold. */
export function roomWords(state: BatchState, panel: DeviationPanel, format: Format): string {
  const planned = state.plan.byId.get(panel.deviation.step)
  const vessel = planned && state.plan.vessels.get(endVessel(state, planned.step.vessel))
  if (vessel?.capacityUg === undefined) return ''
  return `room for ${format.mass(vessel.capacityUg, 1_000_000)}`
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
      const sub = `${count} ${count === 1 ? 'target changes' : 'targets change'}, the old ones stay legible`
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
