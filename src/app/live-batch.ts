import type { Signal } from '@preact/signals'
import type { Event } from '../batch/event'
import type { BatchState } from '../batch/state'
import type { BatchSummary } from '../batch/summary'
import type { DeviceKeys } from '../ports/device-keys'
import type { EntryState, EventLog, HeldIntention } from '../ports/event-log'
import type { BatchHandle, FromElsewhere, Unsaved } from './app'
import type { Writer } from './writer'

/** A handle with what the batches' keeper needs beside what a place may use. */
export interface KeptHandle extends BatchHandle {
  /** Entries that another page wrote. */
  readonly take: (events: readonly Event[]) => Promise<void>
  readonly noteStates: (ids: readonly string[], state: EntryState) => void
  /** Decides what was held. What the batch as it is now does not take stays on screen. */
  readonly decideHeld: (held: HeldIntention) => Promise<void>
}

export interface HandleWorld {
  readonly log: EventLog
  readonly writer: Writer
  /** Where there is none nothing is signed in the tablet's name. */
  readonly deviceKeys?: () => Promise<DeviceKeys>
  readonly onChange: (summary: BatchSummary) => void
}

/** What the screen reads of a live batch, and the desk writes. */
export interface Sight {
  readonly id: string
  readonly view: Signal<{ readonly state: BatchState }>
  readonly entryStates: Signal<ReadonlyMap<string, EntryState>>
  readonly unsaved: Signal<readonly Unsaved[]>
  readonly fromElsewhere: Signal<FromElsewhere | null>
  readonly noteStates: KeptHandle['noteStates']
}

/** How a batch is changed: one thing after the other. */
export type Desk = Pick<KeptHandle, 'intend' | 'retry' | 'take' | 'decideHeld'>
