import type { FieldsCsvRefusal } from '../import/fields-csv'
import { formSentenceOf } from './forms'
import { type SentencesOf, sayFrom } from './sentences'

/** Why a table of documents did not come in. Nothing of it did. */
export const csvSentence = (refusal: FieldsCsvRefusal): string => sayFrom<FieldsCsvRefusal>(sentences, refusal)

const sentences: SentencesOf<FieldsCsvRefusal> = {
  CSV_FOREIGN: ({ missing }) =>
    `That is not a list that was saved here: it has no column "${missing}". Save the list as a table first, and change that.`,
  CSV_EMPTY: () => 'The table has its headings and no row below them.',
  CSV_ID_MISSING: ({ row }) => `Row ${row + 1} has no Id. Give it one of its own, letters and digits without blanks.`,
  CSV_ID_TWICE: ({ row, id }) => `Row ${row + 1} has the Id "${id}", which stands above already.`,
  CSV_CELL_WRONG: ({ row, heading, why }) => `Row ${row + 1}, "${heading}": ${formSentenceOf(why)} Nothing came in.`,
}
