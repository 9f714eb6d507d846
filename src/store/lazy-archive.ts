import type { Archive } from '../ports/archive'
import type { ArchiveParts } from './archive-parts'

/** The archive, whose code (and schema library) is fetched only when something leaves or comes. */
export function lazyArchive(parts: ArchiveParts): Archive {
  return {
    write: async (streams, madeAt) => (await import('./archive-write')).writeArchive(parts, streams, madeAt),
    inspect: async (file) => (await import('./archive-apply')).inspectArchive(parts, file),
    secondCopy: async (stream) => (await import('./archive-write')).secondCopy(parts, stream),
    apply: async (file) => (await import('./archive-apply')).applyArchive(parts, file),
  }
}
