import { type KeptPin, type PersonDraft, type Pin, pinIn } from '../../batch/person-trail'
import { accept, type Result, refuse } from '../../trade/result'
import type { App } from '../app'
import { appendTo } from '../append-to'
import { projectStream } from '../project'
import type { Refusal } from '../refusals'
import { freeTries, pinTries, waitLeft } from './pin-tries'

/** PBKDF2-SHA-256 rounds for a PIN that is set today; each kept PIN says its own. */
export const iterationsToday = 600_000

export type PinRefusal =
  | { readonly code: 'PIN_SHAPE' }
  | { readonly code: 'PIN_NONE' | 'PIN_THERE' }
  | { readonly code: 'PIN_WRONG'; readonly left: number }
  | { readonly code: 'PIN_WAIT'; readonly waitMs: number }
  | { readonly code: 'PIN_UNAVAILABLE' }

export type PinsWorld = Pick<App, 'log' | 'drafts' | 'clock' | 'ids' | 'slowHash' | 'settings'>

/** PINs of the people, each kept in the person's own stream. */
export interface Pins {
  readonly of: (person: string) => Promise<KeptPin | null>
  /** Whether `text` is the person's PIN. Wrong ones are counted before they are looked at, so that a reload frees none. */
  readonly check: (person: string, text: string) => Promise<Result<KeptPin, PinRefusal>>
  /** A first PIN, or one in place of another, which was given or is said to be forgotten. */
  readonly set: (person: string, text: string, before: Before) => Promise<Refusal | PinRefusal | null>
  readonly remove: (person: string, current: string) => Promise<Refusal | PinRefusal | null>
}

export type Before =
  | { readonly known: 'none' }
  | { readonly known: 'given'; readonly current: string }
  | { readonly known: 'forgotten'; readonly reason: string }

export const isPin = (text: string): boolean => /^\d{4,12}$/.test(text)

export function createPins(world: PinsWorld): Pins {
  const { log, clock, ids } = world
  const tries = pinTries(world.drafts)

  const of = async (person: string): Promise<KeptPin | null> => pinIn(await log.read(`person:${person}`))

  let turn: Promise<unknown> = Promise.resolve()
  /** One try after the other: two at once would count as one. */
  const check = (person: string, text: string): Promise<Result<KeptPin, PinRefusal>> => {
    const answer = turn.then(() => tryOnce(person, text))
    turn = answer.catch(() => undefined)
    return answer
  }

  const tryOnce = async (person: string, text: string): Promise<Result<KeptPin, PinRefusal>> => {
    const kept = await of(person)
    if (kept === null) return refuse({ code: 'PIN_NONE' })
    const before = await tries.of(person)
    const waitMs = waitLeft(before, clock.nowMs())
    if (waitMs > 0) return refuse({ code: 'PIN_WAIT', waitMs })
    if (!isPin(text)) return refuse({ code: 'PIN_SHAPE' })
    const after = { wrong: before.wrong + 1, lastAtMs: clock.nowMs() }
    await tries.keep(person, after)
    const hash = await hashed(text, kept.pin)
    if (hash === null) return refuse({ code: 'PIN_UNAVAILABLE' })
    if (hash === kept.pin.hash) {
      await tries.forget(person)
      return accept(kept)
    }
    const nowWaitMs = waitLeft(after, clock.nowMs())
    return refuse(
      nowWaitMs > 0 ? { code: 'PIN_WAIT', waitMs: nowWaitMs } : { code: 'PIN_WRONG', left: freeTries - after.wrong },
    )
  }

  const hashed = async (text: string, { salt, iterations }: Omit<Pin, 'hash'>): Promise<string | null> => {
    const slowHash = await world.slowHash()
    return slowHash.hash(text, salt, iterations).catch(() => null)
  }

  const write = (person: string, draft: PersonDraft): Promise<Refusal | null> => {
    const stream = `person:${person}`
    const writer = { replica: () => log.replica, clock, ids }
    const by = () => world.settings.value.value.person || 'nobody'
    return appendTo({ log, writer, by }, stream, draft, (events) => projectStream(stream, events))
  }

  return {
    of,
    check,
    set: async (person, text, before) => {
      if (!isPin(text)) return { code: 'PIN_SHAPE' }
      if (before.known === 'forgotten' && before.reason.trim() === '') return { code: 'REASON_MISSING' }
      if (before.known === 'none' && (await of(person)) !== null) return { code: 'PIN_THERE' }
      const given = before.known === 'given' ? await check(person, before.current) : null
      if (given?.ok === false) return given.refusal
      const salt = (await world.slowHash()).newSalt()
      const hash = await hashed(text, { salt, iterations: iterationsToday })
      if (hash === null) return { code: 'PIN_UNAVAILABLE' }
      const pin = { salt, hash, iterations: iterationsToday }
      const refused = await write(person, { kind: 'pin-set', body: { pin, ...howOf(before) } })
      if (refused === null) await tries.forget(person)
      return refused
    },
    remove: async (person, current) => {
      const given = await check(person, current)
      return given.ok ? write(person, { kind: 'pin-removed', body: {} }) : given.refusal
    },
  }
}

function howOf(before: Before) {
  switch (before.known) {
    case 'none':
      return { how: 'first' as const }
    case 'given':
      return { how: 'changed' as const }
    case 'forgotten':
      return { how: 'forgotten' as const, reason: before.reason.trim() }
  }
}
