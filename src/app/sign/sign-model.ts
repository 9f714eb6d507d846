import { computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { KeptPin } from '../../batch/person-trail'
import type { Signature } from '../../batch/signature'
import type { App } from '../app'
import { pinSentence } from './pin-words'
import { createPins, type PinsWorld } from './pins'

export interface SignWish {
  /** What is signed: "performed", "checked", "reviewed and released". */
  readonly meaning: string
  /** Whose signature is asked for at first; empty where nobody is chosen yet. */
  readonly person: string
}

/** One signature in the making: who, with what PIN, or who else in their place and why. */
export interface SignModel {
  readonly meaning: Signal<string>
  readonly person: Signal<string>
  readonly pin: Signal<string>
  /** Who signs in the person's place; null where the person does. */
  readonly instead: Signal<string | null>
  readonly reason: Signal<string>
  /** Who is to sign after all. */
  readonly signer: ReadonlySignal<string>
  /** Of who is to sign; undefined until it is known. */
  readonly kept: ReadonlySignal<KeptPin | null | undefined>
  /** What keeps it from being given, in a few words; null where it can be. */
  readonly missing: ReadonlySignal<string | null>
  readonly refused: ReadonlySignal<string | null>
  /** The PIN is being looked at. */
  readonly busy: ReadonlySignal<boolean>
  /** The signature, to go into an intention; null where the PIN is not right, which is then said. */
  readonly give: () => Promise<Signature | null>
  readonly dispose: () => void
}

export function createSign(app: PinsWorld & Pick<App, 'catalogue'>, wish: SignWish): SignModel {
  const pins = createPins(app)
  const meaning = signal(wish.meaning)
  const person = signal(wish.person)
  const pin = signal('')
  const instead = signal<string | null>(null)
  const reason = signal('')
  const kept = signal<KeptPin | null | undefined>(undefined)
  const refused = signal<string | null>(null)
  const busy = signal(false)
  const signer = computed(() => instead.value ?? person.value)

  // Another person: another PIN, which may have been set a moment ago.
  const dispose = effect(() => {
    const now = signer.value
    pin.value = ''
    kept.value = undefined
    refused.value = null
    if (now === '') return
    void pins.of(now).then((found) => {
      if (signer.peek() === now) kept.value = found
    })
  })

  const missing = computed((): string | null => {
    if (person.value === '') return 'choose who signs'
    if (instead.value === '') return 'choose who signs instead'
    if (instead.value !== null && reason.value.trim() === '') return 'say why another person signs'
    if (kept.value === undefined) return 'one moment'
    return kept.value !== null && pin.value === '' ? 'type the PIN' : null
  })

  const give = async (): Promise<Signature | null> => {
    if (missing.peek() !== null || busy.peek()) return null
    const who = signer.peek()
    const found = kept.peek()
    const place = instead.peek() === null ? {} : { insteadOf: person.peek(), reason: reason.peek().trim() }
    const signature = { person: who, meaning: meaning.peek(), ...place }
    if (found === null || found === undefined) return { ...signature, how: 'name' }
    busy.value = true
    refused.value = null
    const checked = await pins.check(who, pin.peek()).finally(() => {
      busy.value = false
    })
    pin.value = ''
    if (checked.ok) return { ...signature, how: 'pin', pinSetAt: checked.value.setAt }
    refused.value = pinSentence(checked.refusal)
    return null
  }

  return { meaning, person, pin, instead, reason, signer, kept, missing, refused, busy, give, dispose }
}

/** All of them, one after the other; null where one is not given. */
export async function given(signs: readonly SignModel[]): Promise<readonly Signature[] | null> {
  const signatures: Signature[] = []
  for (const sign of signs) {
    const signature = await sign.give()
    if (signature === null) return null
    signatures.push(signature)
  }
  return signatures
}
