import type { Drafts } from '../../ports/event-log'

/** Wrong PINs in a row that are let pass; after them a wait, doubled with each further one. */
export const freeTries = 5
const firstWaitMs = 5 * 60_000
const longestWaitMs = 60 * 60_000

interface Tries {
  readonly wrong: number
  readonly lastAtMs: number
}

const none: Tries = { wrong: 0, lastAtMs: 0 }

/** How long after `wrong` tries in a row the next one waits. */
export const waitAfter = (wrong: number): number =>
  wrong < freeTries ? 0 : Math.min(longestWaitMs, firstWaitMs * 2 ** (wrong - freeTries))

/** What is left of the wait; a clock that was put back makes it no longer than it was. */
export function waitLeft({ wrong, lastAtMs }: Tries, nowMs: number): number {
  const wait = waitAfter(wrong)
  return Math.min(wait, Math.max(0, lastAtMs + wait - nowMs))
}

/** Wrong tries by person, on this tablet; kept over a reload. */
export function pinTries(drafts: Drafts) {
  const keyOf = (person: string): string => `pin-tries:${person}`
  return {
    of: async (person: string): Promise<Tries> => readTries(await drafts.read(keyOf(person))),
    keep: (person: string, tries: Tries): Promise<void> => drafts.write(keyOf(person), JSON.stringify(tries)),
    forget: (person: string): Promise<void> => drafts.write(keyOf(person), null),
  }
}

function readTries(text: string | null): Tries {
  if (text === null) return none
  try {
    const read: unknown = JSON.parse(text)
    if (typeof read !== 'object' || read === null) return none
    const { wrong, lastAtMs } = read as { wrong?: unknown; lastAtMs?: unknown }
    return Number.isSafeInteger(wrong) && typeof lastAtMs === 'number' ? { wrong: Number(wrong), lastAtMs } : none
  } catch {
    return none
  }
}
