import type { Micrograms } from '../trade/mass'
import { comparableWithinC } from './read-unlike'
import type { BatchState } from './state'
import type { KindOf } from './step'

/** A viscosity read for an adjustment, with how it was read. */
export interface ViscosityReading {
  readonly entry: string
  readonly value: number
  /** Spindle and speed, as they were written down. */
  readonly conditions: string
  readonly sampleC?: number
  /** Net portions recorded before it. */
  readonly addedUg: Micrograms
}

export interface Thickening {
  /** Oldest first. */
  readonly readings: readonly ViscosityReading[]
  readonly addedUg: Micrograms
  /** A portion went in after the last reading. */
  readonly unread: boolean
  /** The last two readings were not read alike, so they cannot be compared. */
  readonly unlike: boolean
  /** The last portion lowered it: past its maximum, salt thins. */
  readonly thinned: boolean
}

/** Below this share a difference is that of two readings. */
const tellingShare = 0.05

/** How an adjustment of viscosity has gone so far. There is no curve to trust: nothing is proposed. */
export function thickeningOf(state: BatchState, step: KindOf<'adjust'>): Thickening {
  const portions = state.steps.get(step.id)?.portions ?? []
  const addedUg = state.steps.get(step.id)?.netUg ?? 0
  const readings = state.measurements
    .filter(({ body }) => body.check === step.check && (body.step ?? step.id) === step.id)
    .flatMap(({ id, lamport, body }): readonly ViscosityReading[] => {
      if (body.value === undefined) return []
      const before = portions.filter((portion) => portion.lamport < lamport)
      return [
        {
          entry: id,
          value: body.value,
          conditions: body.conditions ?? '',
          addedUg: before.reduce((sum, portion) => sum + portion.body.netUg, 0),
          ...(body.sampleC === undefined ? {} : { sampleC: body.sampleC }),
        },
      ]
    })
  const last = readings.at(-1)
  const earlier = last && readings.findLast((each) => each.addedUg < last.addedUg)
  const unlike = last !== undefined && earlier !== undefined && !areAlike(earlier, last)
  return {
    readings,
    addedUg,
    unread: last !== undefined && last.addedUg !== addedUg,
    unlike,
    thinned: last !== undefined && earlier !== undefined && !unlike && last.value < earlier.value * (1 - tellingShare),
  }
}

function areAlike(one: ViscosityReading, other: ViscosityReading): boolean {
  if (one.conditions !== other.conditions) return false
  if (one.sampleC === undefined || other.sampleC === undefined) return true
  return Math.abs(one.sampleC - other.sampleC) <= comparableWithinC
}
