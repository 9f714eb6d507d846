import type { ReadonlySignal, Signal } from '@preact/signals'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { Balance, KeptVessel, Lot, Material, Person } from '../batch/catalogue'
import type { Event } from '../batch/event'
import type { Formula } from '../batch/formula'
import type { Intention } from '../batch/intention'
import type { BatchState } from '../batch/state'
import type { BatchSummary } from '../batch/summary'
import type { Alarm } from '../ports/alarm'
import type { Archive } from '../ports/archive'
import type { Awake } from '../ports/awake'
import type { Clock } from '../ports/clock'
import type { DeviceKeys } from '../ports/device-keys'
import type { Drafts, EntryState, EventLog, HealReport, StorageState } from '../ports/event-log'
import type { Ids } from '../ports/ids'
import type { Pictures } from '../ports/pictures'
import type { Share } from '../ports/share'
import type { SlowHash } from '../ports/slow-hash'
import type { Upkeep } from '../ports/upkeep'
import type { Micrograms } from '../trade/mass'
import type { Refusal } from './refusals/refusal'
import type { Route } from './routes'

/** Everything a place may use. Made once in main.tsx, handed down by context. */
export interface App {
  readonly route: ReadonlySignal<Route>
  readonly go: (to: Route) => void
  /** Wall clock in ms UTC, moved on every second while visible. */
  readonly nowMs: ReadonlySignal<number>
  readonly clock: Clock
  readonly ids: Ids
  readonly log: EventLog
  readonly drafts: Drafts
  readonly archive: () => Promise<Archive>
  readonly alarm: Alarm
  readonly awake: Awake
  readonly share: Share
  readonly slowHash: () => Promise<SlowHash>
  readonly deviceKeys: () => Promise<DeviceKeys>
  readonly pictures: () => Promise<Pictures>
  readonly settings: SettingsModel
  readonly catalogue: Catalogue
  readonly batches: Batches
  readonly storage: ReadonlySignal<StorageState>
  readonly heals: ReadonlySignal<readonly HealReport[]>
  readonly upkeep: Upkeep
  readonly update: UpdateModel
  readonly bells: Bells
  /** What was just recorded and can be undone for six seconds. */
  readonly justDone: Signal<JustDone | null>
  /** Loads the demonstration files through the same door as any import. */
  readonly loadDemonstration: () => Promise<Refusal | null>
  readonly hasDemonstration: ReadonlySignal<boolean>
  /**
   * Resolves once the first screen stands and both copies are compared: the moment to fetch what neither of them needs.
   * A start on a slow tablet would wait for it otherwise.
   */
  readonly calm: Promise<void>
}

export interface JustDone {
  readonly text: string
  readonly atMs: number
  readonly undo: () => Promise<void>
}

export interface Settings {
  readonly theme: 'system' | 'light' | 'dark'
  readonly hand: 'right' | 'left'
  readonly decimalMark: 'locale' | '.' | ','
  readonly studio: string
  readonly currency: string
  /** The person at this tablet; an id of the catalogue, or empty before anybody is known. */
  readonly person: string
  readonly lastBackupAt?: string
  /** What stood here when the last backup was made: entries of everything but settings, and batches. */
  readonly lastBackupEntries?: number
  readonly lastBackupBatches?: number
  /** When a backup is asked for, where it is not the usual. */
  readonly backupAfterDays?: number
  readonly backupAfterEntries?: number
  /** How far a tool is across, mm, by its name in formulas. */
  readonly [tool: `tool:${string}`]: number | undefined
}

export interface SettingsModel {
  readonly value: ReadonlySignal<Settings>
  readonly decimalMark: ReadonlySignal<'.' | ','>
  readonly person: ReadonlySignal<Person | null>
  readonly change: (part: Partial<Settings>) => Promise<void>
}

/** The catalogue's documents by id, kept in step with the log. Lists are sorted by name; archived ones stay in. */
export interface Catalogue {
  readonly loaded: ReadonlySignal<boolean>
  readonly materials: ReadonlySignal<ReadonlyMap<string, Material>>
  readonly lots: ReadonlySignal<ReadonlyMap<string, Lot>>
  readonly formulas: ReadonlySignal<ReadonlyMap<string, Formula>>
  readonly people: ReadonlySignal<ReadonlyMap<string, Person>>
  readonly balances: ReadonlySignal<ReadonlyMap<string, Balance>>
  readonly vessels: ReadonlySignal<ReadonlyMap<string, KeptVessel>>
  /** Received + adjustments − what the ledgers of all batches used, by lot id. Read when asked: it looks at every batch. */
  readonly onHand: () => Promise<ReadonlyMap<string, Micrograms>>
  readonly save: <F extends DocumentFamily>(
    family: F,
    document: Documents[F],
    reason?: string,
  ) => Promise<Refusal | null>
  /** Revision numbers of a formula that a batch has used: those are immutable. */
  readonly usedRevisions: (formulaId: string) => Promise<ReadonlySet<number>>
}

export interface Documents {
  material: Material
  lot: Lot
  formula: Formula
  person: Person
  balance: Balance
  vessel: KeptVessel
}

export type DocumentFamily = keyof Documents

/** Batches: those in hand are followed; any other is read when opened. */
export interface Batches {
  /** Open and parked batches, the one touched last first. */
  readonly inHand: ReadonlySignal<readonly BatchSummary[]>
  readonly finished: (limit: number, before?: string) => Promise<readonly BatchSummary[]>
  /** Opens (or returns) the live handle of a batch; null where there is none of that id. */
  readonly open: (batchId: string) => Promise<BatchHandle | null>
  /** Writes `opened`; answers the new batch's id. */
  readonly start: (
    intention: Extract<Intention, { do: 'open' }>,
    more: readonly Intention[],
  ) => Promise<{ id: string } | { refusal: Refusal }>
}

export interface BatchHandle {
  readonly id: string
  /** A new object whenever the batch changed. */
  readonly view: ReadonlySignal<BatchView>
  /** Where each entry of this session stands; entries read from storage are `recorded`. */
  readonly entryStates: ReadonlySignal<ReadonlyMap<string, EntryState>>
  /** Entries that could not be written: kept here until they can, with their reason. */
  readonly unsaved: ReadonlySignal<readonly Unsaved[]>
  /**
   * Settles when the entries are durable (or refused, held, not saved). `recorded` is called with the ids of the entries
   * in the same breath in which the batch changes, so that what follows from it is drawn with it.
   */
  readonly intend: (intention: Intention, recorded?: (entries: readonly string[]) => void) => Promise<Outcome>
  readonly retry: () => Promise<void>
  /** Takes an entry that does not fit the batch any more off the screen. */
  readonly drop: (unsaved: Unsaved) => void
  /** What another page just wrote into this batch, for a quiet line on screen. */
  readonly fromElsewhere: ReadonlySignal<FromElsewhere | null>
}

/** The newest entry that another page wrote, and when it came here. */
export interface FromElsewhere {
  readonly event: Event
  readonly atMs: number
}

export interface BatchView {
  readonly state: BatchState
}

export interface Unsaved {
  readonly intention: Intention
  readonly reason: string
  readonly atMs: number
  readonly state: 'held' | 'not-saved'
}

export type Outcome =
  | { readonly ok: true; readonly entries: readonly string[]; readonly state: EntryState }
  | { readonly ok: false; readonly refusal: Refusal }

/** Timers of all batches in hand whose time has come, the first to come first. They sound until stopped. */
export interface Bells {
  readonly ringing: ReadonlySignal<readonly Bell[]>
  readonly stop: (bell: Bell) => Promise<void>
}

export interface Bell {
  readonly batch: string
  readonly batchName: string
  readonly timer: string
  readonly label: string
  readonly deadlineAtMs: number
}

export interface UpdateModel {
  readonly waiting: ReadonlySignal<boolean>
  readonly takeOver: () => void
  readonly buildId: string
}

const AppContext = createContext<App | null>(null)

export const AppProvider = AppContext.Provider

/** The app of this page. Throws where a view stands outside of it: a mistake of ours. */
export function useApp(): App {
  const app = useContext(AppContext)
  if (app === null) throw new Error('useApp outside of AppProvider')
  return app
}
