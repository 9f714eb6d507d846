import type { PremixRefusal } from '../../batch/premix'
import { grams, type SentencesOf } from './sentences'

/** What Start cannot take as it was typed or chosen. */
export type StartRefusal =
  | { readonly code: 'START_SIZE_ABSURD'; readonly largestUg: number }
  | { readonly code: 'START_DENSITY_UNKNOWN' }
  | {
      readonly code: 'START_TOO_LITTLE'
      readonly name: string
      readonly balance: string
      readonly sizeUg: number
    }
  | { readonly code: 'START_TARE_OVER'; readonly balance: string; readonly capacityUg: number }
  | { readonly code: 'START_NO_PERSON' }
  | { readonly code: 'START_SLOPE_ABSURD'; readonly percent: number }
  | { readonly code: 'START_BUFFERS_UNCLEAR' }
  | { readonly code: 'START_AMBIENT_ABSURD'; readonly temperatureC: number }

/** Why a line cannot be diluted so; lines by their bench names. */
export const premixSentences: SentencesOf<PremixRefusal> = {
  PREMIX_CIRCULAR: ({ lines }) =>
    `${lines.join(' and ')} would each be diluted in the other. Dilute one of them in something else.`,
  PREMIX_TOO_MUCH: ({ line, into }) => `There is not enough ${into} in the formula to dilute ${line} in it so far.`,
  PREMIX_OF_PREMIX: ({ line, into }) => `${into} is itself weighed as a pre-mix. Dilute ${line} in something else.`,
  PREMIX_NOT_A_SHARE: ({ line }) => `${line} is added as needed or takes the rest, so it is not pre-mixed.`,
  PREMIX_LINE_GONE: ({ line }) => `${line} is not in this revision any more.`,
}

export const startSentences: SentencesOf<StartRefusal> = {
  START_SIZE_ABSURD: ({ largestUg }) =>
    `That is more than ${largestUg / 1e9} kg, far outside a bench. Check the decimal mark and the unit.`,
  START_DENSITY_UNKNOWN: () =>
    'What a volume weighs depends on its density, which this formula states in no check. Write the size as a mass.',
  START_TOO_LITTLE: ({ name, balance, sizeUg }) =>
    `There would be less ${name} than ${balance} can show. Make ${grams(sizeUg)} or more, or weigh it on a finer balance.`,
  START_TARE_OVER: ({ balance, capacityUg }) =>
    `That is more than ${balance}, the largest here, can carry (${grams(capacityUg)}). Check the decimal mark.`,
  START_NO_PERSON: () => 'Nobody is known here yet. Add yourself in Setup, so that the record can say who weighed.',
  START_SLOPE_ABSURD: ({ percent }) => `A slope of ${percent} % cannot be. Meters give about 95 to 105 %.`,
  START_BUFFERS_UNCLEAR: () => 'Write two buffers or more, each between 0 and 14, with blanks between: 4.01 7.00.',
  START_AMBIENT_ABSURD: ({ temperatureC }) => `${temperatureC} °C is no room to weigh in. Check the decimal mark.`,
}
