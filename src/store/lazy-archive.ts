import type { Event } from '../batch/event'
import type { Archive } from '../ports/archive'
import type { Connection } from './connection'
import type { Project } from './head-row'
import type { SecondCopy } from './second-copy'

export interface ArchiveParts {
  readonly connection: Connection
  readonly second: SecondCopy
  readonly project: Project
  readonly onDurable: (events: readonly Event[]) => void
  readonly databaseWhole: () => Promise<void>
}

/** The archive, whose code (and schema library) is fetched only when something leaves or comes. */
export function lazyArchive(parts: ArchiveParts): Archive {
  return {
    write: async (streams, madeAt) => (await import('./archive-write')).writeArchive(parts, streams, madeAt),
    inspect: async (file) => (await import('./archive-apply')).inspectArchive(parts, file),
    apply: async (file) => (await import('./archive-apply')).applyArchive(parts, file),
  }
}
