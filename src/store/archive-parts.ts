import type { Event } from '../batch/event'
import type { Connection } from './connection'
import type { Project } from './head-row'
import type { Journal } from './journal-port'
import type { SecondCopy } from './second-copy'

/** What the archive needs of the store. */
export interface ArchiveParts {
  readonly connection: Connection
  readonly second: SecondCopy
  readonly journal: Pick<Journal, 'read'>
  readonly loadProject: () => Promise<Project>
  readonly onDurable: (events: readonly Event[]) => void
  readonly databaseWhole: () => Promise<void>
}
