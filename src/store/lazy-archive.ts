import type { Archive } from '../ports/archive'
import type { ArchiveParts } from './archive-shelf'

/** The archive, whose code (and schema library) is fetched only when something leaves or comes. */
export async function lazyArchive(parts: ArchiveParts): Promise<Archive> {
  const [{ archiveOf }, { shelfOf }] = await Promise.all([import('./archive'), import('./archive-shelf')])
  return archiveOf(shelfOf(parts))
}
