import type { FieldRefusal } from '../forms/read-fields'
import type { SentencesOf } from './sentences'

/** Those of a typed number stand with the numbers. */
export type FormFieldRefusal = Exclude<FieldRefusal, { readonly code: `NUMBER_${string}` }>

export const fieldSentences: SentencesOf<FormFieldRefusal> = {
  FIELD_EMPTY: ({ label }) => `${label} is needed.`,
  FIELD_TOO_LONG: ({ longest }) => `That is too long: ${longest} characters at most.`,
  FIELD_TOO_MANY: ({ most }) => `Those are too many: ${most} lines at most.`,
  FIELD_BELOW: ({ limit, unit }) => `That is too little: ${withUnit(limit, unit)} at least.`,
  FIELD_ABOVE: ({ limit, unit }) => `That is too much: ${withUnit(limit, unit)} at most.`,
  FIELD_NOT_WHOLE: () => 'A whole number is needed here.',
  FIELD_NOT_A_DATE: () => 'That is not a day of the calendar. Write it as 2026-06-30.',
  FIELD_NOT_CHOSEN: () => 'Choose one of the list.',
  FIELD_ONE_OF_TWO: () => 'Give one of the two, not both.',
  FIELD_UNIT_UNKNOWN: ({ unit }) =>
    `"${unit.slice(0, 24)}" is not a unit of a share. Write %, or a mass in g, mg or kg.`,
  FIELD_OTHER_UNIT: ({ unit }) => `Write it in ${unit}.`,
  FIELD_NEEDS_SIZE: () => 'A mass becomes a share of the usual batch: say its size first.',
  FIELD_TWICE: () => 'Another one has this already. Choose a different one.',
  FIELD_UNORDERED: () => 'This end is below the other one. Change one of the two.',
  PART_WITHOUT_SHARE: ({ line }) => `Line ${line} has no percentage. Write the name, then its share: "Glycerin 20".`,
}

const withUnit = (limit: number, unit: string): string => (unit === '' ? `${limit}` : `${limit} ${unit}`)
