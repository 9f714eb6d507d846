import type { Micrograms } from '../trade/mass'
import type { Lot, Material } from './catalogue'
import type { DeviceSigned } from './device-signature'
import type { Draft, Event } from './event'
import type { BatchHeader, BatchVessel } from './header'
import type { Measured } from './how-read'
import type { Pictured } from './picture'
import type { Addition } from './plan'
import type { Signed } from './signature'
import type { StabilityBodies } from './stability-plan'
import type { Step } from './step'

/** What each kind of batch entry says. Masses µg, temperatures °C, moments ms UTC. `step` is a planned step's id. */
export interface Bodies extends StabilityBodies {
  opened: BatchHeader
  'preflight-checked': { items: readonly { text: string; done: boolean }[] }
  'instrument-checked': { instrument: InstrumentCheck; good: boolean }
  tared: { vessel: string; tareUg: Micrograms; standsIn?: string }
  'lot-chosen': {
    line: string
    lots: readonly string[]
    /** Those of them that Start did not plan with, whole. */
    opened?: readonly Lot[]
    reason?: string
  }
  weighed: {
    step: string
    line: string
    vessel: string
    lot?: string
    balance?: string
    netUg: Micrograms
    mode: 're-tare' | 'cumulative' | 'by-difference'
    /** What the balance showed, before and after where two readings make the net. */
    readings: readonly Micrograms[]
    targetUg: Micrograms
    lowUg: Micrograms
    highUg: Micrograms
    checkedBy?: string
  }
  /** The weighing of `entry` came from this lot. */
  'lot-corrected': { step: string; entry: string; lot: string; reason: string }
  struck: { entry: string; reason: string }
  charged: { step: string; from: string; to: string; residueUg: Micrograms; rinseUg: Micrograms; rinseLine?: string }
  /** Thrown away: a whole vessel or cup, or some of one line taken out of a cup again. */
  discarded: { vessel: string; massUg: Micrograms | 'all'; line?: string; reason: string }
  spilled: { vessel: string; massUg: Micrograms; reason: string }
  'unplanned-added': {
    component: string
    /** Of a rework that asked for it. */
    step?: string
    materialId?: string
    name: string
    vessel: string
    netUg: Micrograms
    lot?: string
    reason: string
    /** The most of it that a finished product may hold, where its material says so. */
    most?: number
    /** As it was known then, so that limits on what it holds count it. */
    material?: Material
  }
  'step-started': { step: string }
  'step-finished': {
    step: string
    saw?: string
    checkedBy?: string
    toolRpm?: number
    /** Diameter of what turns, mm: with the speed it gives the tip speed. */
    toolMm?: number
  }
  'step-skipped': { step: string; reason: string }
  'gate-passed': { step: string; gate: string; detail: string; reason: string }
  'temperature-read': { vessel: string; temperatureC: number; step?: string }
  /** What a vessel stands in, or its cover, is another from here on: what was read before tells nothing of after. */
  'bath-changed': { vessel: string; what: string }
  'surroundings-told': Surroundings
  'timer-started': { timer: string; step?: string; label: string; startedAtMs: number; deadlineAtMs: number }
  'timer-acknowledged': { timer: string; lateMs: number }
  measured: Measured
  adjusted: { step: string; line: string; vessel: string; netUg: Micrograms; lot?: string; balance?: string }
  transferred: {
    step: string
    from: string
    to: string
    residueUg: Micrograms
    rinseUg: Micrograms
    rinseLine?: string
    fromC?: number
    toC?: number
  }
  evaporated: { vessel: string; massUg: Micrograms; line: string; seenBy: string }
  'made-up': {
    step: string
    vessel: string
    line: string
    netUg: Micrograms
    grossUg?: Micrograms
    /** What the reading was above the books, gone on with for a reason. */
    aboveUg?: Micrograms
    lot?: string
  }
  sampled: { step?: string; vessel: string; massUg: Micrograms; jars: number; purpose: string }
  filled: {
    step?: string
    vessel: string
    massUg: Micrograms
    units: number
    /** The vessel on the balance, before the first unit and after the last. */
    grossBeforeUg?: Micrograms
    grossAfterUg?: Micrograms
  }
  'deviation-noticed': {
    deviation: string
    entry: string
    step: string
    line: string
    direction: 'over' | 'under'
    byUg: Micrograms
    inCup: boolean
    cause?: DeviationCause
    /** Of a loss: what went of each line. */
    lost?: readonly { line: string; massUg: Micrograms }[]
  }
  'remedy-chosen': {
    deviation: string
    remedy: RemedyKind
    reason: string
    totalUg: Micrograms
    heldBackUg: Micrograms
    /** New targets by step; what is not named keeps its target. */
    targets: readonly { step: string; line: string; fromUg: Micrograms; toUg: Micrograms }[]
    /** Other deviations that it settles as well: a remedy reckons with all that is in. */
    also?: readonly string[]
  }
  /** `deviation`: what was found out about one. */
  noted: { text: string; step?: string; deviation?: string }
  pictured: Pictured
  'person-changed': { person: string; from: string }
  parked: { reason: string }
  resumed: Record<string, never>
  signed: Signed
  'device-signed': DeviceSigned
  'clock-jumped': { byMs: number }
  healed: { code: string; entries: number; streams: number }
  abandoned: { reason: string }
  /** The batch is opened again, with steps of its own after those of the formula. */
  reworked: {
    part: number
    reason: string
    /** Emptied out of its units again, back into a vessel. */
    returned?: { vessel: string; massUg: Micrograms }
    steps: readonly (Step | Addition)[]
    /** What it adds is weighed into, where the batch is weighed up first. */
    cups?: readonly BatchVessel[]
  }
  closed: { decision: Disposition; note?: string }
}

export type Disposition = 'accept' | 'hold' | 'rework' | 'reject'

/**
 * Ways on: leave it; every line at one multiple of its plan; the same in a smaller batch; the least batch within all
 * limits; q.s. takes what is left; nearest to the formula at the planned total; the least cost; start a vessel again.
 */
export type RemedyKind = 'accept' | 'scale' | 'smaller' | 'extra' | 'qs' | 'departure' | 'cost' | 'discard'

/** What is off other than a reading: a line short for good, something foreign, mass that is gone, a barred lot. */
export type DeviationCause = 'forgotten' | 'foreign' | 'loss' | 'lot'

/** What heats or cools: the room, a vessel's bath, its plate (with a set point where a probe holds it). */
export type Surroundings =
  | { readonly of: 'room'; readonly temperatureC: number }
  | { readonly of: 'bath'; readonly vessel: string; readonly temperatureC: number }
  | { readonly of: 'plate'; readonly vessel: string; readonly setC?: number }

export type InstrumentCheck =
  | {
      readonly kind: 'balance'
      readonly id: string
      readonly name: string
      readonly referenceUg: Micrograms
      readonly readUg: Micrograms
    }
  | {
      readonly kind: 'pH meter'
      readonly name: string
      readonly slopePercent: number
      readonly buffers: readonly number[]
    }
  | { readonly kind: 'alarm'; readonly heard: boolean }

export type Kind = keyof Bodies
export type BatchEvent = { [K in Kind]: Event<K, Bodies[K]> }[Kind]
export type BatchDraft = { [K in Kind]: Draft<K, Bodies[K]> & { readonly id?: string } }[Kind]

const known: { readonly [K in Kind]: true } = {
  opened: true,
  'preflight-checked': true,
  'instrument-checked': true,
  tared: true,
  'lot-chosen': true,
  weighed: true,
  'lot-corrected': true,
  struck: true,
  charged: true,
  discarded: true,
  spilled: true,
  'unplanned-added': true,
  'step-started': true,
  'step-finished': true,
  'step-skipped': true,
  'gate-passed': true,
  'temperature-read': true,
  'bath-changed': true,
  'surroundings-told': true,
  'timer-started': true,
  'timer-acknowledged': true,
  measured: true,
  adjusted: true,
  transferred: true,
  evaporated: true,
  'made-up': true,
  sampled: true,
  filled: true,
  'deviation-noticed': true,
  'remedy-chosen': true,
  noted: true,
  pictured: true,
  'person-changed': true,
  parked: true,
  resumed: true,
  signed: true,
  'device-signed': true,
  'clock-jumped': true,
  healed: true,
  'stability-planned': true,
  'cycle-counted': true,
  abandoned: true,
  reworked: true,
  closed: true,
}

/** True where this version knows the kind; bodies are checked where entries come in from outside. */
export const isKnown = (event: Event): event is BatchEvent => Object.hasOwn(known, event.kind) && event.v === 1
