import type { SentencesOf } from './sentences'

/** What is missing or wrong in a check that is entered from the record. */
export type CheckRefusal =
  | { readonly code: 'CHECK_NOT_CHOSEN' }
  | { readonly code: 'CHECK_NOT_SEEN' }
  | { readonly code: 'CHECK_NOT_JUDGED' }
  | { readonly code: 'CHECK_MOMENT_MISSING' }
  | { readonly code: 'CHECK_IN_FUTURE' }
  | { readonly code: 'CHECK_BEFORE_BATCH' }
  | { readonly code: 'CHECK_REASON_MISSING' }
  | { readonly code: 'CHECK_WITHOUT_NAME' }
  | { readonly code: 'CHECK_WITHOUT_UNIT' }
  | { readonly code: 'CHECK_NAME_LONG' }
  | { readonly code: 'CHECK_DIFFERENCE_UNSAID' }
  | { readonly code: 'CHECKS_EMPTY' }
  | { readonly code: 'REWORK_REASON_MISSING' }
  | { readonly code: 'REWORK_STEPS_MISSING' }
  | { readonly code: 'REWORK_MATERIAL_MISSING' }
  | { readonly code: 'NOTE_EMPTY' }

export const recordSentences: SentencesOf<CheckRefusal> = {
  CHECK_NOT_CHOSEN: () => 'Choose what was checked.',
  CHECK_NOT_SEEN: () => 'Write what you saw.',
  CHECK_NOT_JUDGED: () => 'Say whether it is as it should be.',
  CHECK_MOMENT_MISSING: () => 'Say when it was read: day and time.',
  CHECK_IN_FUTURE: () => 'That moment has not come yet. Check the day.',
  CHECK_BEFORE_BATCH: () => 'That is before the batch was opened. Check the day.',
  CHECK_REASON_MISSING: () => 'Say why it is entered late: one tap or a few words.',
  CHECK_WITHOUT_NAME: () => 'Say what was checked.',
  CHECK_WITHOUT_UNIT: () => 'A figure without its unit says nothing. Say in what it was read.',
  CHECK_NAME_LONG: () => 'That is too long to write down. Shorten it: a spindle to 40 signs, a name to 200.',
  CHECK_DIFFERENCE_UNSAID: () => 'Say in a few words what is different.',
  CHECKS_EMPTY: () => 'Nothing is entered yet. Fill in at least one check.',
  REWORK_REASON_MISSING: () => 'Say why it is reworked.',
  REWORK_STEPS_MISSING: () => 'A rework needs at least one step: add what is to be done.',
  REWORK_MATERIAL_MISSING: () => 'Say what goes in.',
  NOTE_EMPTY: () => 'Write something first.',
}
