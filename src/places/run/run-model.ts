import type { ReadonlySignal, Signal } from '@preact/signals'
import type { App, BatchHandle } from '../../app/app'
import type { Refusal } from '../../app/refusals'
import type { Gate } from '../../batch/gate'
import type { Intention } from '../../batch/intention'
import type { PlannedStep } from '../../batch/plan'
import type { DeviationState } from '../../batch/state'
import type { Weighing } from '../../batch/weighing-of'
import type { Draft, DraftBook, NumberMode } from './draft'
import type { TimerFact } from './timers'
import type { Reckoner } from './typed'
import type { Judged, Net } from './weigh-model'

/** Whether the screen is kept on. */
export type AwakeState = Parameters<Parameters<App['awake']['onChange']>[0]>[0]

/** A page over the run: at most one is open. */
export type SheetName =
  | 'steps'
  | 'unplanned'
  | 'spill'
  | 'discard-cup'
  | 'strike'
  | 'park'
  | 'abandon'
  | 'hand-over'
  | 'lot'
  | 'correct-lot'
  | 'more'
  | 'close'
  | 'gate'
  | 'note'
  | 'leave-short'
  | 'skip'
  | 'tare'
  | 'scale-up'
  | 'sign'
  | 'picture'

export interface OpenSheet {
  readonly name: SheetName
  /** The entry or vessel it is about. */
  readonly about?: string
  readonly gate?: Gate
}

/** The batch on the screen: the step in hand, what is typed for it, and what a person can do. */
export interface RunModel extends RunSignals, RunActions {
  readonly app: App
  readonly handle: BatchHandle
  /** The batch of the handle a frame earlier: what was recorded is said in its row before the screen moves on. */
  readonly standing: BatchHandle['view']
  readonly drafts: DraftBook
  readonly reckoner: Reckoner
  /** The field that the pad writes into. */
  readonly activeField: Signal<string>
  readonly sheet: Signal<OpenSheet | null>
  readonly refusal: ReadonlySignal<Refusal | null>
  readonly awake: ReadonlySignal<AwakeState>
  /** An intention is on its way to the disk, and takes long enough to be noticed. */
  readonly saving: ReadonlySignal<boolean>
  readonly dispose: () => void
}

/** What follows from the batch, the clock and what is typed. */
export interface RunSignals {
  /** Null once every step is done. */
  readonly stepId: ReadonlySignal<string | null>
  readonly planned: ReadonlySignal<PlannedStep | null>
  readonly draft: ReadonlySignal<Draft>
  readonly weighing: ReadonlySignal<Weighing | null>
  readonly net: ReadonlySignal<Net>
  readonly judged: ReadonlySignal<Judged | null>
  /** What stands in the way of beginning the step in hand, and of calling it finished. */
  readonly gates: ReadonlySignal<readonly Gate[]>
  readonly finishGates: ReadonlySignal<readonly Gate[]>
  /** The open deviation of the step in hand. The ways on from it are worked out by deviation-model, which comes late. */
  readonly deviation: ReadonlySignal<DeviationState | null>
  readonly timers: ReadonlySignal<readonly TimerFact[]>
  readonly checksDue: ReadonlySignal<number>
}

export interface RunActions {
  /** Takes a step in hand. It looks at it or works on it; it skips nothing. */
  readonly take: (stepId: string) => void
  /** One step on or back in the plan. */
  readonly step: (by: 1 | -1) => void
  readonly type: (field: string, text: string) => void
  readonly setMode: (mode: NumberMode) => void
  /** Records what is typed as a weighing of the step in hand. True where it was taken. */
  readonly record: () => Promise<boolean>
  /** Sends an intention; with `done` words it can be undone for six seconds. True where it was taken. */
  readonly act: (intention: Intention, done?: string) => Promise<boolean>
  readonly strike: (entry: string, reason: string) => Promise<boolean>
  /** Settles the open deviation of the step in hand the chosen way, which must still be the one that was shown. */
  readonly settle: (shown?: string) => Promise<boolean>
  /** Tries again to write what could not be saved. */
  readonly retry: () => Promise<void>
  readonly stopBell: (fact: TimerFact) => Promise<void>
}
