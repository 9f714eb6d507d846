import { type Refusal, sentenceOf } from '../refusals'
import { type SentencesOf, sayFrom } from '../refusals/sentences'
import type { PinRefusal } from './pins'

const pinSentences: SentencesOf<PinRefusal> = {
  PIN_SHAPE: () => 'A PIN has 4 to 12 digits.',
  PIN_NONE: () => 'This person has no PIN. One is set in Setup, under People.',
  PIN_THERE: () => 'This person has a PIN already. Type it to change it.',
  PIN_WRONG: ({ left }) =>
    `That is not the PIN. ${left === 1 ? 'One try is' : `${left} tries are`} left before a wait.`,
  PIN_WAIT: ({ waitMs }) => `Too many wrong tries. Try again in ${minutes(waitMs)}, or let another person sign.`,
  PIN_UNAVAILABLE: () =>
    'This browser cannot check a PIN here: it needs a secure address (https). Another person without PIN can sign.',
}

export const pinSentence = (refusal: PinRefusal | Refusal): string =>
  isOfPins(refusal) ? sayFrom<PinRefusal>(pinSentences, refusal) : sentenceOf(refusal)

const isOfPins = (refusal: PinRefusal | Refusal): refusal is PinRefusal => Object.hasOwn(pinSentences, refusal.code)

const minutes = (ms: number): string => {
  const whole = Math.ceil(ms / 60_000)
  return whole === 1 ? 'a minute' : `${whole} minutes`
}

/** What a PIN is and is not: said where it is set and where it is given. */
export const whatAPinIs = 'A PIN is a control for a bench. It does not prove who somebody is.'
