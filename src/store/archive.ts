import type { Archive } from '../ports/archive'
import { applyArchive, inspectArchive } from './archive-apply'
import { asResult } from './archive-refused'
import type { ArchiveShelf } from './archive-shelf'
import { writeArchive } from './archive-write'

/** Files from and to a shelf; what can go wrong with them is an answer, never thrown. */
export const archiveOf = (shelf: ArchiveShelf): Archive => ({
  write: (streams, madeAt, watch) => asResult(() => writeArchive(shelf, streams, madeAt, watch)),
  inspect: (file, watch) => asResult(() => inspectArchive(shelf, file, watch)),
  secondCopy: shelf.readSecond,
  apply: (file, watch) => asResult(() => applyArchive(shelf, file, watch)),
})
