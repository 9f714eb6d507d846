import type { Ledger } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import type { Event } from './event'
import type { BatchHeader } from './header'
import type { Bodies, DeviationCause, Disposition, InstrumentCheck, RemedyKind } from './kinds'
import type { Plan } from './plan'

/** Everything known about a batch, folded from its log. Nobody but the fold changes one. */
export interface BatchState {
  readonly stream: string
  readonly header: BatchHeader
  /** As planned at Start; its lines learn of lots that are opened later. */
  plan: Plan
  stage: 'in-hand' | 'parked' | 'closed' | 'abandoned'
  openedAtMs: number
  person: string
  /** What the balances were told to reach; remedies change it and keep the old figures. */
  totalUg: Micrograms
  totalWas: Micrograms[]
  heldBackUg: Micrograms
  readonly steps: Map<string, StepState>
  readonly vessels: Map<string, VesselState>
  readonly ledger: Ledger
  readonly timers: Map<string, TimerState>
  readonly deviations: Map<string, DeviationState>
  readonly entries: Entry[]
  readonly unplanned: Map<string, Event<'unplanned-added', Bodies['unplanned-added']>>
  readonly measurements: Event<'measured', Bodies['measured']>[]
  readonly instruments: { readonly atMs: number; readonly check: InstrumentCheck; readonly good: boolean }[]
  readonly preflight: { readonly text: string; readonly done: boolean }[]
  readonly lotsOfLine: Map<string, readonly string[]>
  /** Mass used by lot, whatever became of it. */
  readonly usedByLot: Map<string, Micrograms>
  readonly doubts: Doubt[]
  /** Kinds that this version does not know: the batch is shown read-only. */
  readonly unknownKinds: Set<string>
  decision?: { readonly decision: Disposition; readonly atMs: number; readonly by: string; readonly note?: string }
  /** Reworks so far, the first one first. */
  parts: readonly Part[]
  lastAtMs: number
  /** True once two entries were written without knowing of each other. */
  forked: boolean
  lastLamport: number
  lastHash: string | null
  /** The next number of each replica that wrote here. */
  readonly nextOf: Map<string, number>
}

/** A rework: steps of its own after those of the formula. Checks are due anew after it. */
export interface Part {
  readonly n: number
  readonly entry: string
  readonly atMs: number
  readonly steps: readonly string[]
  /** How many readings there were before it. */
  readonly readBefore: number
}

export interface StepState {
  readonly id: string
  /** The planned target first, the one that counts now last; empty for steps without a mass. */
  targets: Micrograms[]
  startedAtMs?: number
  finished?: { readonly atMs: number; readonly how: 'done' | 'skipped' | 'accepted'; readonly note?: string }
  /** Net weighed for this step, in the formula's assay, and as it stood on the balance. */
  countedUg: Micrograms
  netUg: Micrograms
  readonly weighings: Event<'weighed', Bodies['weighed']>[]
  /** Portions of an adjuster, in order. */
  readonly portions: Event<'adjusted', Bodies['adjusted']>[]
  readonly gatesPassed: Map<string, string>
  timer?: string
}

export interface VesselState {
  readonly id: string
  tareUg?: Micrograms
  /** Where its contents went, once charged or combined into another vessel. */
  emptiedInto?: string
  emptiedAtMs?: number
  firstFilledAtMs?: number
  /** Oldest first. */
  readonly readings: { readonly atMs: number; readonly temperatureC: number; readonly entry: string }[]
}

export interface TimerState {
  readonly id: string
  readonly step?: string
  readonly label: string
  readonly startedAtMs: number
  readonly deadlineAtMs: number
  acknowledged?: { readonly atMs: number; readonly lateMs: number }
}

export interface DeviationState {
  readonly id: string
  readonly entry: string
  readonly step: string
  readonly line: string
  readonly direction: 'over' | 'under'
  readonly byUg: Micrograms
  readonly inCup: boolean
  /** Absent where a reading was past its band or left short. */
  readonly cause?: DeviationCause
  readonly lost?: Bodies['deviation-noticed']['lost']
  readonly atMs: number
  settled?: {
    readonly how: RemedyKind | 'taken out' | 'struck out'
    readonly reason: string
    readonly atMs: number
    readonly by: string
  }
}

/** An entry as the record shows it. */
export interface Entry {
  readonly event: Event
  struck?: { readonly reason: string; readonly atMs: number; readonly by: string; readonly event: string }
}

/** Something that does not add up and that a person should look at; nothing was refused or hidden for it. */
export type Doubt =
  | { readonly code: 'WEIGHED_TWICE'; readonly step: string; readonly entries: readonly string[] }
  | { readonly code: 'DOES_NOT_ADD_UP'; readonly entry: string; readonly why: string }
  | { readonly code: 'UNKNOWN_STEP'; readonly entry: string }
  | { readonly code: 'STRUCK_UNKNOWN'; readonly entry: string }
