import type { HealReport } from '../ports/event-log'
import { counted } from './counted'

/** What was found and mended between the copies. */
export function healText({ code, entries, streams }: HealReport): string {
  const what = `${counted(entries, 'entry', 'entries')} of ${counted(streams, 'batch or document', 'batches or documents')}`
  switch (code) {
    case 'HEALED_DATABASE':
      return `The database was behind: ${what} came back from the journal.`
    case 'HEALED_JOURNAL':
      return `The journal was behind: ${what} came back from the database.`
    case 'HEALED_BOTH':
      return `Each copy lacked something that the other had: ${what} were made whole.`
    case 'TORN_LINE':
      return `The journal's last line was torn, as a power cut does: ${what} were made whole from the database.`
    case 'ONE_COPY_ONLY':
      return 'Only one copy is being written. Save a backup file today.'
    case 'DAMAGED_ENTRY':
      return `${what} do not match their checksum and were not used. Keep the tablet as it is and save a backup file.`
  }
}
