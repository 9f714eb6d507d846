import type { App } from '../../app/app'

type StorageState = App['storage']['value']

export interface StorageLine {
  readonly label: string
  readonly text: string
  readonly tone: 'good' | 'caution' | 'over'
}

/** How the two copies are, and how safe their room is, in words. */
export function storageLines(state: StorageState): readonly StorageLine[] {
  return [databaseLine(state.database), journalLine(state.journal), comparedLine(state), keptLine(state.persisted)]
}

/** "12 MB of 2.1 GB", or what is known of it. */
export function roomText({ usedBytes, quotaBytes }: StorageState): string {
  if (usedBytes === null) return 'This browser does not say how much room is used.'
  return quotaBytes === null
    ? `${bytesText(usedBytes)} used`
    : `${bytesText(usedBytes)} used of ${bytesText(quotaBytes)}`
}

function databaseLine(database: StorageState['database']): StorageLine {
  const label = 'First copy, the database'
  switch (database) {
    case 'open':
      return { label, text: 'works', tone: 'good' }
    case 'dead':
      return { label, text: 'does not answer; entries are held in the second copy until it does', tone: 'over' }
    case 'blocked':
      return { label, text: 'another page of the app is in the way: close the others', tone: 'over' }
    case 'newer':
      return {
        label,
        text: 'a newer version of the app has been here: close every page and open it again',
        tone: 'over',
      }
    case 'refused':
      return { label, text: 'this browser lets nothing be kept, as in a private window', tone: 'over' }
  }
}

function journalLine(journal: StorageState['journal']): StorageLine {
  const label = 'Second copy, the journal'
  switch (journal) {
    case 'open':
      return { label, text: 'works', tone: 'good' }
    case 'dead':
      return { label, text: 'failed; it is being started again, meanwhile there is one copy', tone: 'caution' }
    case 'missing':
      return { label, text: 'this browser has no place for it: there is one copy only', tone: 'caution' }
  }
}

const comparedLine = ({ compared, journal }: StorageState): StorageLine =>
  compared
    ? { label: 'Compared', text: journal === 'open' ? 'the two agree' : 'as far as can be', tone: 'good' }
    : { label: 'Compared', text: 'not yet since the start', tone: 'caution' }

const keptLine = (persisted: boolean): StorageLine =>
  persisted
    ? { label: 'Kept for good', text: 'yes: the browser clears it only when you tell it to', tone: 'good' }
    : { label: 'Kept for good', text: 'not promised: the browser may clear it when space is short', tone: 'caution' }

function bytesText(bytes: number): string {
  const units = ['bytes', 'kB', 'MB', 'GB', 'TB']
  const size = bytes < 1000 ? 0 : Math.min(Math.floor(Math.log10(bytes) / 3), units.length - 1)
  const value = bytes / 1000 ** size
  return `${value < 10 && size > 0 ? value.toFixed(1) : Math.round(value)} ${units[size]}`
}
