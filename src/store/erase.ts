import type { eraseNote } from './erase-note'
import type { Locks } from './locks'

/** What erasing touches; handed in, so that it can be tried out without a browser. */
export interface EraseWorld {
  /** Of this tab alone, and gone with it. */
  readonly note: typeof eraseNote
  readonly locks: Pick<Locks, 'held'>
  readonly deleteDatabase: () => Promise<void>
  readonly deleteJournal: () => Promise<void>
  readonly deletePreferences: () => void
  readonly wait: (ms: number) => Promise<void>
}

const tries = 20
const pauseMs = 150

/** Leaves word that the next start shall erase everything: before it, this page's own copies are open. */
export const askToErase = ({ note }: Pick<EraseWorld, 'note'>): void => note.leave()

/**
 * At start, before anything is opened. `refused`: another page of the app is open and would write everything back, so
 * nothing was deleted.
 */
export async function eraseIfAsked(world: EraseWorld): Promise<'nothing-asked' | 'erased' | 'refused'> {
  const { note } = world
  if (!note.isLeft()) return 'nothing-asked'
  note.remove()
  if (!(await isAlone(world))) return 'refused'
  await world.deleteDatabase()
  await world.deleteJournal()
  world.deletePreferences()
  return 'erased'
}

/** The lock of the page that was here before the reload goes a moment after it. */
async function isAlone({ locks, wait }: EraseWorld): Promise<boolean> {
  for (let round = 0; round < tries; round += 1) {
    const held = await locks.held()
    if (![...held].some((name) => name.startsWith('page:'))) return true
    await wait(pauseMs)
  }
  return false
}
