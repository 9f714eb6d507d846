import type { Project } from './head-row'
import type { Locks } from './locks'
import type { Pages } from './pages'
import type { RestartableJournal } from './second-copy'
import type { StateHolder } from './storage-state'

/** What a store is put together from: handed in, so that it can be tried out without a browser. */
export interface StoreParts {
  /** Its code is fetched beside that of the first screen. */
  readonly journal: Promise<RestartableJournal>
  readonly locks: Locks
  readonly pageId: string
  readonly pages: Pages
  readonly state: StateHolder
  readonly loadProject: () => Promise<Project>
  readonly newId: () => string
  /** ISO 8601 with the local offset. */
  readonly now: () => Promise<string>
  readonly patienceMs: number
}
