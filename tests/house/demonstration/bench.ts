import { decide } from '../../../src/batch/decide.ts'
import type { Event, Tip } from '../../../src/batch/event.ts'
import { extendBatch } from '../../../src/batch/extend.ts'
import { foldBatch } from '../../../src/batch/fold.ts'
import type { BatchHeader } from '../../../src/batch/header.ts'
import { msOf } from '../../../src/batch/instant.ts'
import type { Intention } from '../../../src/batch/intention.ts'
import { isoOf } from '../../../src/batch/iso-of.ts'
import { seal } from '../../../src/batch/seal.ts'
import type { BatchState } from '../../../src/batch/state.ts'
import { advance, emptyTip } from '../../../src/batch/tip.ts'
import { type Noise, noiseOf } from './noise.ts'

/** A batch driven through the app's own door: intentions are decided, sealed and folded, with a clock of our own. */
export interface Bench {
  readonly noise: Noise
  readonly state: BatchState
  readonly events: readonly Event[]
  readonly nowMs: number
  /** Who stands at the bench: a person's id. */
  by: string
  /** Throws where the app refuses: the demonstration must be possible to do. */
  readonly intend: (intention: Intention) => readonly Event[]
  readonly wait: (minutes: number) => void
  /** Moves the clock to a moment, ISO with offset; never back. */
  readonly until: (iso: string) => void
}

/** The installation that the demonstration was made on. */
const replica = 'demonstration'

export function openBench(header: BatchHeader, at: string, seed: number): Bench {
  const stream = `batch:${header.id}`
  const events: Event[] = []
  let nowMs = msOf(at)
  let tip: Tip = emptyTip
  let state: BatchState | null = null
  let ids = 0
  const newId = (): string => {
    ids += 1
    return idOf(nowMs, seed * 4096 + ids)
  }
  const bench: Bench = {
    noise: noiseOf(seed),
    get state() {
      if (state === null) throw new Error('not opened')
      return state
    },
    events,
    get nowMs() {
      return nowMs
    },
    by: header.people.performs.id,
    intend(intention) {
      const decided = decide(state, intention, { nowMs, by: bench.by, newId })
      if (!decided.ok) throw new Error(`${header.code}: ${intention.do}: ${JSON.stringify(decided.refusal)}`)
      const written = decided.value.map((draft) => {
        const event = seal(draft, tip, {
          stream,
          replica,
          id: draft.id ?? newId(),
          at: isoOf(nowMs, offsetMinutes(nowMs)),
          by: bench.by,
        })
        tip = advance(tip, event)
        return event
      })
      events.push(...written)
      state = state === null ? foldBatch(events) : extendBatch(state, written)
      return written
    },
    wait(minutes) {
      nowMs += Math.round(minutes * 60) * 1000
    },
    until(iso) {
      const toMs = msOf(iso)
      if (toMs < nowMs) throw new Error(`${header.code}: ${iso} is past`)
      nowMs = toMs
    },
  }
  return bench
}

/** A UUID of version 7 (RFC 9562) from the moment and a count, in place of randomness. */
export function idOf(atMs: number, count: number): string {
  const time = atMs.toString(16).padStart(12, '0')
  const tail = count.toString(16).padStart(12, '0')
  return `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-${tail}`
}

/** British summer time ended on 25 October 2026 at 01:00 UTC. */
const offsetMinutes = (atMs: number): number => (atMs < Date.UTC(2026, 9, 25, 1) ? 60 : 0)
