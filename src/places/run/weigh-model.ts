import type { BatchState } from '../../batch/state'
import { type Weighing, weighingOf } from '../../batch/weighing-of'
import type { Micrograms } from '../../trade/mass'
import { judge } from '../../trade/tolerance'
import type { QuantityRefusal } from '../../trade/units'
import { netOf, type Reading, type WeighingRefusal } from '../../trade/weighing'
import type { Draft } from './draft'
import type { Reckoner } from './typed'

/** The net mass of what is typed. `field` is the one that is wrong or still wanted. */
export type Net =
  | { readonly kind: 'empty' }
  | { readonly kind: 'reckoning' }
  | { readonly kind: 'wanted'; readonly field: ReadingField }
  | { readonly kind: 'bad'; readonly field: ReadingField; readonly refusal: QuantityRefusal | WeighingRefusal }
  | { readonly kind: 'net'; readonly netUg: Micrograms; readonly reading: Reading; readonly sum?: string }

export type ReadingField = 'reading' | 'before'

/** How what is typed stands to what is left to weigh. `byUg` is the distance to the target, never negative. */
export interface Judged {
  readonly state: 'to-go' | 'within' | 'over'
  readonly netUg: Micrograms
  readonly byUg: Micrograms
}

/** The lot in use: the one chosen for this weighing, else the first of the line. */
export function lotInUse(state: BatchState, stepId: string, draft: Draft): string | undefined {
  const line = state.plan.byId.get(stepId)?.line?.line.id
  const lots = line === undefined ? undefined : state.lotsOfLine.get(line)
  return draft.fields.lot || lots?.[0]
}

export const weighingInHand = (state: BatchState, stepId: string, draft: Draft): Weighing | null =>
  weighingOf(state, stepId, lotInUse(state, stepId, draft))

/** What the balance last showed for this vessel: where a pan that is not tared again starts from. */
export function lastReadingUg(state: BatchState, vessel: string): Micrograms {
  for (let at = state.entries.length - 1; at >= 0; at -= 1) {
    const entry = state.entries[at]
    if (entry === undefined || entry.struck || entry.event.kind !== 'weighed') continue
    const body = entry.event.body as { vessel: string; readings: readonly Micrograms[] }
    if (body.vessel === vessel) return body.readings.at(-1) ?? 0
  }
  return 0
}

/** Reads what is typed in the person's way of weighing. `previousUg` stands in where no earlier reading is typed. */
export function netTyped(draft: Draft, reckoner: Reckoner, previousUg: Micrograms): Net {
  const now = reckoner.mass(draft.fields.reading ?? '', { negative: false })
  const before = reckoner.mass(draft.fields.before ?? '', { negative: false })
  if (draft.mode !== 're-tare' && before.kind === 'bad')
    return { kind: 'bad', field: 'before', refusal: before.refusal }
  if (now.kind === 'bad') return { kind: 'bad', field: 'reading', refusal: now.refusal }
  if (now.kind === 'reckoning' || before.kind === 'reckoning') return { kind: 'reckoning' }
  if (now.kind === 'empty') return { kind: 'empty' }
  const reading = readingOf(draft, now.value, before.kind === 'number' ? before.value : null, previousUg)
  if (reading === null) return { kind: 'wanted', field: 'before' }
  const net = netOf(reading)
  if (!net.ok) return { kind: 'bad', field: 'reading', refusal: net.refusal }
  return { kind: 'net', netUg: net.value, reading, ...(now.sum === undefined ? {} : { sum: now.sum }) }
}

/** Judged on what is left of the target, so that part weighings add up to it. */
export function judgeNet(weighing: Weighing, netUg: Micrograms): Judged {
  const band = { lowUg: weighing.leftLowUg, highUg: weighing.leftHighUg }
  const judgement = judge(netUg, band, weighing.stepUg)
  return {
    state: judgement === 'under' ? 'to-go' : judgement,
    netUg,
    byUg: Math.abs(weighing.leftUg - netUg),
  }
}

function readingOf(
  draft: Draft,
  nowUg: Micrograms,
  beforeUg: Micrograms | null,
  previousUg: Micrograms,
): Reading | null {
  switch (draft.mode) {
    case 're-tare':
      return { mode: 're-tare', readingUg: nowUg }
    case 'cumulative':
      return { mode: 'cumulative', readingUg: nowUg, previousUg: beforeUg ?? previousUg }
    case 'by-difference':
      return beforeUg === null ? null : { mode: 'by-difference', beforeUg, afterUg: nowUg }
  }
}
