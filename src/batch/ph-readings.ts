import { contentsOf, type Ledger, massIn } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { extendBatch } from './extend'
import { foldBatch } from './fold'
import type { Check, MeasureBasis } from './formula'
import { msOf } from './instant'
import { vesselNow } from './progress'
import type { BatchState } from './state'
import type { KindOf } from './step'

/** A pH read for an adjustment, and why it is left out of the reckoning where it is. */
export interface PhReading {
  readonly entry: string
  readonly atMs: number
  readonly ph: number
  readonly sampleC?: number
  /** Adjuster in the vessel for each part of everything else, by mass, when it was read. */
  readonly ratio: number
  /** What stood in the vessel once the sample was out. */
  readonly massUg: Micrograms
  /** Net portions recorded before it. */
  readonly addedUg: Micrograms
  readonly leftOut?: LeftOut
}

/** basis: another dilution than the check's · apart: more than 3 °C from the latest reading · hot: above 30 °C */
export type LeftOut = 'basis' | 'apart' | 'hot'

/** Above this the sample is to be cooled first; readings further apart than the other are not comparable. °C. */
export const hottestSampleC = 30
const comparableWithinC = 3

/** The readings of an adjustment, oldest first. Of several bases and temperatures only those of one count. */
export function phReadings(state: BatchState, step: KindOf<'adjust'>, check: Check): readonly PhReading[] {
  const read = readingsInOrder(state, step)
  const comparable = read.findLast(({ basis, sampleC }) => isOfBasis(check, basis) && !isHot(sampleC) && sampleC)
  return read.map(({ basis, ...reading }) => {
    const leftOut = whyLeftOut(check, basis, reading.sampleC, comparable?.sampleC)
    return leftOut === null ? reading : { ...reading, leftOut }
  })
}

function whyLeftOut(
  check: Check,
  basis: MeasureBasis | undefined,
  sampleC: number | undefined,
  comparableC: number | undefined,
): LeftOut | null {
  if (!isOfBasis(check, basis)) return 'basis'
  if (isHot(sampleC)) return 'hot'
  if (sampleC === undefined || comparableC === undefined) return null
  return Math.abs(sampleC - comparableC) > comparableWithinC ? 'apart' : null
}

const isHot = (sampleC: number | undefined): boolean => sampleC !== undefined && sampleC > hottestSampleC

/** A reading that does not say its basis was taken as the check asks. */
function isOfBasis({ basis: asked }: Check, basis: MeasureBasis | undefined): boolean {
  if (asked === undefined || basis === undefined) return true
  if (asked.kind !== 'dilution' || basis.kind !== 'dilution') return asked.kind === basis.kind
  return asked.fraction === basis.fraction
}

type ReadAs = Omit<PhReading, 'leftOut'> & { readonly basis?: MeasureBasis }

/** Replays the batch up to each reading: what stood in the vessel then is what the reading is of. */
function readingsInOrder(state: BatchState, step: KindOf<'adjust'>): readonly ReadAs[] {
  const own = new Set(
    state.measurements
      .filter(({ body }) => body.check === step.check && (body.step ?? step.id) === step.id && body.value !== undefined)
      .map(({ id }) => id),
  )
  const counting = state.entries.filter(({ event, struck }) => struck === undefined && event.kind !== 'struck')
  const events = counting.map(({ event }) => event)
  const readings: ReadAs[] = []
  let upTo = 0
  let then: BatchState | null = null
  let firstRatio: number | null = null
  for (const [index, event] of events.entries()) {
    if (!own.has(event.id)) continue
    const more = events.slice(upTo, index + 1)
    then = then === null ? foldBatch(more) : extendBatch(then, more)
    upTo = index + 1
    const body = state.measurements.find(({ id }) => id === event.id)?.body
    if (body?.value === undefined) continue
    const vessel = vesselNow(then, step.vessel)
    const ratio = ratioIn(then.ledger, vessel, step.line)
    const addedUg = then.steps.get(step.id)?.netUg ?? 0
    // What of the line was in before the first portion belongs to the batch.
    firstRatio ??= addedUg === 0 ? ratio : 0
    readings.push({
      entry: event.id,
      atMs: msOf(event.occurredAt ?? event.at),
      ph: body.value,
      ratio: Math.max(0, ratio - firstRatio),
      massUg: Math.max(0, massIn(then.ledger, vessel) - (body.sampleUg ?? 0)),
      addedUg,
      ...(body.sampleC === undefined ? {} : { sampleC: body.sampleC }),
      ...(body.basis === undefined ? {} : { basis: body.basis }),
    })
  }
  return readings
}

function ratioIn(ledger: Ledger, vessel: string, line: string): number {
  const lineUg = contentsOf(ledger, vessel).get(line) ?? 0
  const restUg = massIn(ledger, vessel) - lineUg
  return restUg > 0 ? lineUg / restUg : 0
}
