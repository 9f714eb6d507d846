import { batch } from '@preact/signals'
import { decide } from '../batch/decide'
import type { Event } from '../batch/event'
import { extendBatch, tipFor } from '../batch/extend'
import { foldBatch } from '../batch/fold'
import type { Intention } from '../batch/intention'
import { isoOf } from '../batch/iso-of'
import { isKnown } from '../batch/kinds'
import { pinIn } from '../batch/person-trail'
import type { BatchState } from '../batch/state'
import { shelfOf, summaryOf } from '../batch/summary-of'
import type { HeldIntention } from '../ports/event-log'
import type { Ids } from '../ports/ids'
import { once } from '../trade/once'
import type { Outcome, Unsaved } from './app'
import type { Desk, HandleWorld, Sight } from './live-batch'
import { signEnd } from './sign/sign-head'
import { sealAll, type Writer } from './writer'

type Recorded = Parameters<Desk['intend']>[1]

/** Times that another page may get in between before a person is told to try again. */
const mostTries = 8

/**
 * The desk of a live batch: intentions are decided one after the other, made durable, and only then folded and shown.
 * Where another page was faster, the log is read again and the intention decided anew.
 */
export function openDesk(world: HandleWorld, sight: Sight): Desk {
  const { log, writer } = world
  const { view, unsaved, fromElsewhere, noteStates } = sight
  const stream = `batch:${sight.id}`
  const heldHere = new Map<string, Unsaved>()
  let queue: Promise<unknown> = Promise.resolve()

  const publish = (state: BatchState, summary = summaryOf(state)): void =>
    batch(() => {
      view.value = { state }
      world.onChange(summary)
    })

  const hear = (arrived: readonly Event[]): void => {
    const event = arrived.at(-1)
    fromElsewhere.value = event ? { event, atMs: writer.clock.nowMs() } : null
  }

  const readAgain = async (): Promise<void> => {
    const all = await log.read(stream)
    if (all.length <= view.value.state.entries.length) return
    publish(foldBatch(all))
    hear(all)
  }

  const keepUnsaved = (intention: Intention, reason: string, state: Unsaved['state']): Unsaved => {
    const kept = { intention, reason, atMs: writer.clock.nowMs(), state }
    // Nobody asked for the tablet's own signature: nobody is to decide what becomes of it.
    if (intention.do !== 'sign-head') unsaved.value = [...unsaved.value, kept]
    return kept
  }

  /** `late` is what was held: it keeps its moment, its person and its id, so that it cannot be decided twice. */
  const attempt = async (intention: Intention, late?: HeldIntention, recorded?: Recorded): Promise<Outcome> => {
    for (let tries = 0; tries < mostTries; tries += 1) {
      const signsWithPin = await pinsFor(intention)
      const { state } = view.value
      const by = late?.by ?? state.person
      const ids = idsFrom(writer, late?.id)
      const decision = decide(state, intention, { nowMs: writer.clock.nowMs(), by, newId: ids.next, signsWithPin })
      if (!decision.ok) return decision
      if (decision.value.length === 0) return { ok: true, entries: [], state: 'recorded' }
      const drafts = late ? decision.value.map((draft) => ({ ...draft, occurredAt: late.at })) : decision.value
      const sealed = sealAll({ ...writer, ids }, stream, drafts, tipFor(state, writer.replica()), by)
      const entries = sealed.map((event) => event.id)
      const grown = once(() => {
        const next = extendBatch(state, sealed)
        return { next, summary: summaryOf(next) }
      })
      const projection = () => ({ shelf: shelfOf(grown().summary), summary: grown().summary })
      const answer = await log.append({ events: sealed, after: state.lastHash, projection })
      switch (answer.state) {
        case 'recorded':
        case 'one-copy':
          batch(() => {
            noteStates(entries, answer.state)
            publish(grown().next, grown().summary)
            recorded?.(entries)
          })
          if (sealed.some(isSignedByTablet)) void signTheEnd(sealed.at(-1)?.hash ?? '')
          return { ok: true, entries, state: answer.state }
        case 'conflict':
          await readAgain()
          break
        case 'held':
          return hold(intention, by)
        case 'not-saved':
          keepUnsaved(intention, answer.reason, 'not-saved')
          return { ok: false, refusal: { code: answer.reason } }
      }
    }
    keepUnsaved(intention, 'STORAGE_BUSY', 'not-saved')
    return { ok: false, refusal: { code: 'STORAGE_BUSY' } }
  }

  /** Behind what was asked for, which waits for no key. */
  const signTheEnd = async (head: string): Promise<void> => {
    const signed = await signEnd(world, { stream, head, by: view.value.state.person })
    if (signed !== null) await inTurn(() => attempt({ do: 'sign-head', signed }))
  }

  /** Whether who checks signs with a PIN; it is looked up only where somebody checks. */
  const pinsFor = async (intention: Intention): Promise<(person: string) => boolean> => {
    const checker = 'checkedBy' in intention && !intention.signature ? intention.checkedBy : undefined
    const kept = checker === undefined ? null : pinIn(await log.read(`person:${checker}`))
    return (person) => person === checker && kept !== null
  }

  const hold = async (intention: Intention, by: string): Promise<Outcome> => {
    const held: HeldIntention = {
      id: writer.ids.next(),
      stream,
      at: isoOf(writer.clock.nowMs(), writer.clock.offsetMinutes()),
      by,
      intention,
    }
    const kept = await log.hold(held)
    heldHere.set(held.id, keepUnsaved(intention, kept === 'held' ? 'STORAGE_DEAD' : 'STORAGE_REFUSED', kept))
    return kept === 'held'
      ? { ok: true, entries: [], state: 'held' }
      : { ok: false, refusal: { code: 'STORAGE_REFUSED' } }
  }

  /** What the batch as it is now does not take stays on screen, with a person to decide about it. */
  const again = async (intention: Intention, late?: HeldIntention): Promise<void> => {
    const before = unsaved.value.length
    const outcome = await attempt(intention, late)
    if (!outcome.ok && unsaved.value.length === before) keepUnsaved(intention, 'HELD_REFUSED', 'not-saved')
  }

  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const run = queue.then(work)
    queue = run.catch(() => undefined)
    return run
  }

  return {
    intend: (intention, recorded) => inTurn(() => attempt(intention, undefined, recorded)),
    retry: () =>
      inTurn(async () => {
        const waiting = unsaved.value.filter((each) => each.state === 'not-saved')
        unsaved.value = unsaved.value.filter((each) => each.state !== 'not-saved')
        for (const each of waiting) await again(each.intention)
      }),
    take: (arrived) =>
      inTurn(async () => {
        const known = new Set(view.value.state.entries.map((entry) => entry.event.id))
        const fresh = arrived.filter((event) => !known.has(event.id))
        if (fresh.length === 0) return
        // One page of this tablet writes after what the other wrote; anything else is read whole.
        if (fresh[0]?.parents[0] !== view.value.state.lastHash) return readAgain()
        publish(extendBatch(view.value.state, fresh))
        hear(fresh)
      }),
    decideHeld: (held) =>
      inTurn(async () => {
        unsaved.value = unsaved.value.filter((each) => each !== heldHere.get(held.id))
        heldHere.delete(held.id)
        if (view.value.state.entries.some((entry) => entry.event.id === held.id)) return
        // Kept by this app as it was asked for; `decide` checks it against the batch as it is now.
        await again(held.intention as Intention, held)
      }),
  }
}

/** Ends and signatures of a batch, not of one step. */
const isSignedByTablet = (event: Event): boolean =>
  isKnown(event) &&
  (event.kind === 'closed' || event.kind === 'abandoned' || (event.kind === 'signed' && event.body.step === undefined))

/** Ids of new entries; the first is the given one, where there is one. */
function idsFrom(writer: Writer, first: string | undefined): Ids {
  let given = first
  return {
    next: () => {
      const id = given ?? writer.ids.next()
      given = undefined
      return id
    },
  }
}
