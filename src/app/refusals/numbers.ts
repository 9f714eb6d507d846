import type { NumberRefusal } from '../../trade/number-text'
import type { QuantityRefusal } from '../../trade/units'
import type { SentencesOf } from './sentences'

export type TypedRefusal = NumberRefusal | QuantityRefusal

export const numberSentences: SentencesOf<TypedRefusal> = {
  NUMBER_EMPTY: () => 'Type a number first.',
  NUMBER_LETTERS: ({ text }) => `"${short(text)}" is not a number. Use digits and one decimal mark.`,
  NUMBER_TWO_MARKS: ({ text }) =>
    `"${short(text)}" has more than one decimal mark. Type it with one: 1234.5 or 1234,5.`,
  NUMBER_NEGATIVE: () => 'It cannot be below zero. Leave the minus out.',
  NUMBER_ZERO: () => 'It must be more than zero.',
  NUMBER_ABSURD: ({ value }) => `${value} is far outside what is weighed or measured here. Check the decimal mark.`,
  NUMBER_SUM_UNCLEAR: ({ text }) => `"${short(text)}" cannot be worked out. Use + − × ÷ and brackets only.`,
  UNIT_UNKNOWN: ({ unit }) => `"${short(unit)}" is not a unit that fits here.`,
}

const short = (text: string): string => (text.length > 24 ? `${text.slice(0, 24)}…` : text)
