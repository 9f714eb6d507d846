import type { Event } from '../batch/event'
import type { EntryState, HeldIntention } from '../ports/event-log'
import { eventText, heldText, releasedText } from './journal-line'
import type { Journal } from './journal-port'

/** A journal that can be started again, and says whether it may be had at all. */
export interface RestartableJournal extends Journal {
  start(): Promise<boolean>
  state(): 'open' | 'dead' | 'missing'
}

export interface SecondCopy {
  /** Writes entries that the database holds already. */
  write(events: readonly Event[]): Promise<'recorded' | 'one-copy'>
  hold(held: HeldIntention): Promise<'held' | 'not-saved'>
  heldIntentions(): Promise<readonly HeldIntention[]>
  releaseHeld(id: string): Promise<void>
  /** Makes sure that the journal still answers, and starts it again where it does not. */
  revive(): Promise<void>
}

export interface SecondCopyHooks {
  readonly onEntryState: (ids: readonly string[], state: EntryState) => void
  /** Runs when the journal answers again after it had to be started. */
  readonly onRestarted: () => Promise<void>
}

const pausesMs = [250, 1_000, 4_000, 15_000, 60_000]

/** The journal as a second copy that catches up: what it failed to take is written when it runs again. */
export function secondCopy(journal: RestartableJournal, { onEntryState, onRestarted }: SecondCopyHooks): SecondCopy {
  const behind = new Map<string, Event>()
  const held = new Map<string, HeldIntention>()
  let attempt = 0
  let waiting: ReturnType<typeof setTimeout> | null = null

  function retryLater(): void {
    if (waiting !== null || journal.state() === 'missing') return
    waiting = setTimeout(
      () => {
        waiting = null
        void revive()
      },
      pausesMs[Math.min(attempt, pausesMs.length - 1)],
    )
    attempt += 1
  }

  async function revive(): Promise<void> {
    try {
      if (journal.state() === 'open') await journal.probe()
      else if (await journal.start()) await onRestarted()
      else return retryLater()
      await catchUp()
      attempt = 0
    } catch {
      retryLater()
    }
  }

  async function catchUp(): Promise<void> {
    const events = [...behind.values()]
    if (events.length === 0) return
    await journal.append(events.map(eventText))
    for (const event of events) behind.delete(event.id)
    onEntryState(
      events.map((event) => event.id),
      'recorded',
    )
  }

  return {
    async write(events) {
      if (journal.state() === 'missing') return 'one-copy'
      try {
        await journal.append(events.map(eventText))
        return 'recorded'
      } catch {
        for (const event of events) behind.set(event.id, event)
        retryLater()
        return 'one-copy'
      }
    },
    async hold(intention) {
      try {
        await journal.append([heldText(intention)])
        held.set(intention.id, intention)
        return 'held'
      } catch {
        retryLater()
        return 'not-saved'
      }
    },
    async heldIntentions() {
      try {
        return await journal.held()
      } catch {
        return [...held.values()]
      }
    },
    async releaseHeld(id) {
      held.delete(id)
      await journal.append([releasedText(id)]).catch(retryLater)
    },
    revive,
  }
}
