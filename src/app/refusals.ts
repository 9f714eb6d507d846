import { signal } from '@preact/signals'
import { numberSentences, type TypedRefusal } from './refusals/numbers'
import type { Refusal } from './refusals/refusal'
import { type SentencesOf, sayFrom } from './refusals/sentences'

export type { Refusal } from './refusals/refusal'

const whole = signal<SentencesOf<Refusal> | null>(null)

/** Fetches the sentences; warmed after the first screen. */
export async function loadSentences(): Promise<void> {
  if (whole.peek() === null) whole.value = (await import('./refusals/all')).allSentences
}

/**
 * What a person reads: what, where, what to do. What is said while typing is there at once; the rest is fetched after
 * the first screen, and a view that asks before is shown anew when it has come.
 */
export function sentenceOf(refusal: Refusal): string {
  if (isTyped(refusal)) return sayFrom<TypedRefusal>(numberSentences, refusal)
  if (whole.value !== null) return sayFrom<Refusal>(whole.value, refusal)
  void loadSentences()
  return ''
}

const isTyped = (refusal: Refusal): refusal is TypedRefusal => Object.hasOwn(numberSentences, refusal.code)
