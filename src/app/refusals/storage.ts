import type { ArchiveRefusal, DamagedEntry } from '../../ports/archive'
import type { ShareRefusal } from '../../ports/share'
import type { SentencesOf } from './sentences'

export type StorageRefusal =
  | {
      readonly code:
        | 'STORAGE_FULL'
        | 'STORAGE_REFUSED'
        | 'STORAGE_NEWER'
        | 'STORAGE_BLOCKED'
        | 'STORAGE_DEAD'
        | 'STORAGE_BUSY'
        | 'HELD_REFUSED'
    }
  | { readonly code: 'DEMONSTRATION_FAILED'; readonly why: string }

export const storageSentences: SentencesOf<StorageRefusal | ArchiveRefusal | ShareRefusal> = {
  STORAGE_FULL: () => 'Storage is full. Save a backup file, then make room on this tablet.',
  STORAGE_REFUSED: () =>
    'This browser does not let the app keep anything, as in a private window. Open it in a normal one.',
  STORAGE_NEWER: () => 'A newer version of the app has been here. Close every page of it and open it again.',
  STORAGE_BLOCKED: () => 'Another page of the app is in the way. Close the others, then try again.',
  STORAGE_DEAD: () => 'The database does not answer. The entry is kept in the second copy and decided when it returns.',
  STORAGE_BUSY: () => 'Another page kept getting in between. Try again.',
  HELD_REFUSED: () => 'The batch has gone on, and what was kept does not fit it any more. Enter it anew.',
  DEMONSTRATION_FAILED: ({ why }) => `The demonstration could not be loaded: ${why}`,
  FILE_FOREIGN: () => 'That is not a file of this app.',
  FILE_NEWER: ({ version }) => `The file was made by a newer version (${version}). Take the newer app first.`,
  FILE_CUT: ({ expected, found }) =>
    `The file is cut short: ${found} of ${expected} entries are there. Nothing was brought in. Up to there it is sound: look for a whole copy of it.`,
  FILE_DAMAGED: ({ line, entry }) =>
    entry
      ? `The file is damaged at line ${line}: ${damagedWords(entry)}. Nothing was brought in.`
      : `The file is damaged at line ${line}. Nothing was brought in. ${whereIn(line)}`,
  FILE_NOT_VERIFIED: () => 'The file does not read back as it was written, and is no backup. Save it again.',
  STOPPED: ({ cause, done, of }) =>
    done === 0
      ? 'Stopped. Nothing was brought in.'
      : `${stopWords[cause]}: ${done} of ${of} new entries are in. Bring the file in again, and it goes on from there.`,
  FILE_TOO_LARGE: ({ bytes }) => `The file is ${Math.ceil(bytes / 1e6)} MB, more than this app reads.`,
  SHARE_NEEDS_TAP: () => 'The file is ready. Tap once more to hand it on.',
  SHARE_FAILED: () => 'The file could not be handed on. Try again.',
}

const stopWords = { asked: 'Stopped', full: 'Storage is full', refused: 'The database does not answer' } as const

/** The entries stand after the header, one a line. */
function whereIn(line: number): string {
  if (line < 1) return 'It changed, or went away, while it was read.'
  if (line === 1) return 'That line tells what is in the file, and does not fit it.'
  return line === 2 ? 'That is its first entry.' : `That is entry ${line - 1}; those before it are sound.`
}

const damagedWords = ({ number, of, kind, field }: DamagedEntry): string =>
  `entry ${number} of ${of} (${kind}) is not as it was written${field === undefined ? '' : `, in ${field}`}`
