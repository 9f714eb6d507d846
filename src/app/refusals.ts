import { signal } from '@preact/signals'
import type { Gate } from '../batch/gate'
import type { BatchState } from '../batch/state'
import type { Format } from './format'
import type { GateWords } from './refusals/gates'
import type { Refusal } from './refusals/refusal'

export type { Refusal } from './refusals/refusal'

const whole = signal<typeof import('./refusals/all') | null>(null)

/** Fetches the sentences; warmed after the first screen. */
export async function loadSentences(): Promise<void> {
  if (whole.peek() === null) whole.value = await import('./refusals/all')
}

/**
 * What a person reads: what, where, what to do. It is fetched after the first screen, or when it is first asked for; a
 * view that asks before is shown anew when it has come.
 */
export function sentenceOf(refusal: Refusal): string {
  if (whole.value !== null) return whole.value.sayAny(refusal)
  void loadSentences()
  return ''
}

/** What a gate says; blank, like a sentence, until the words have come. */
export function gateWords(gate: Gate, state: BatchState, format: Format): GateWords {
  if (whole.value !== null) return whole.value.gateWords(gate, state, format)
  void loadSentences()
  return { title: '', text: '' }
}
