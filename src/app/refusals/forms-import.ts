import type { ImportRefusal } from '../import/import-documents'
import type { Refusal } from '../refusals'
import { allSentences } from './all'
import { formulaSentences } from './forms-formulas'
import { type SentencesOf, sayFrom } from './sentences'

/** Why a file of documents did not come in. Nothing of it did, unless the sentence says so. */
export const importSentences: SentencesOf<ImportRefusal> = {
  DOCUMENT_FIELD_WRONG: ({ path, wanted, found }) =>
    wanted === 'there'
      ? `The file cannot be brought in: ${path} is missing.`
      : `The file cannot be brought in: ${path || 'it'} should be ${wanted}, and is ${found}.`,
  IMPORT_NOT_JSON: () => 'The file cannot be read: it is cut short, damaged, or not a JSON file.',
  IMPORT_FOREIGN: () =>
    'The file is not one of Pannikin: it does not say "format": "pannikin-formulas" and its version.',
  IMPORT_EMPTY: () => 'The file holds no formula, material or other document.',
  IMPORT_NEWER: ({ version }) => `The file is of version ${version}, newer than this app. Take the newer app first.`,
  IMPORT_TOO_LARGE: ({ bytes }) =>
    `The file is ${Math.ceil(bytes / 1e6)} MB; files of documents may have 20 MB at most.`,
  IMPORT_STOPPED: ({ done, of, why }) =>
    `${done} of ${of} documents came in, then: ${sayFrom<Refusal>(allSentences, why)} Bring the file in again to go on.`,
  IMPORT_ID_TWICE: ({ path, id }) => `The file cannot be brought in: ${path} is "${id}", which stands there twice.`,
  IMPORT_LOT_MATERIAL_UNKNOWN: ({ path, lot }) =>
    `The file cannot be brought in: lot ${lot} is of a material that is neither in the file nor here (${path}).`,
  IMPORT_REVISION_TWICE: ({ path, formula, revision }) =>
    `The file cannot be brought in: ${formula} has two revisions ${revision} (${path}).`,
  IMPORT_FORMULA_BROKEN: ({ path, formula, revision, problem }) =>
    `The file cannot be brought in: ${formula} r${revision} cannot be weighed (${path}). ${sayFrom(formulaSentences, problem)}`,
}
