import { effect } from '@preact/signals'
import {
  type CatalogueFile,
  catalogueFileSchema,
  catalogueFormats,
  catalogueVersion,
} from '../../batch/schemas/catalogue-file'
import { type DocumentRefusal, readDocument } from '../../batch/schemas/read-document'
import { accept, type Result, refuse } from '../../trade/result'
import type { App, DocumentFamily, Documents } from '../app'
import type { Refusal } from '../refusals'
import { checkReferences, type ImportProblem } from './check-references'
import { mergeFormula, sameDocument } from './merge'

export type ImportRefusal =
  | DocumentRefusal
  | ImportProblem
  | { readonly code: 'IMPORT_NOT_JSON' | 'IMPORT_FOREIGN' | 'IMPORT_EMPTY' }
  | { readonly code: 'IMPORT_NEWER'; readonly version: number }
  | { readonly code: 'IMPORT_TOO_LARGE'; readonly bytes: number }
  /** Storage gave way: what is in stays in, and bringing in the same file again goes on from there. */
  | { readonly code: 'IMPORT_STOPPED'; readonly done: number; readonly of: number; readonly why: Refusal }

/** What a file brought: documents that are new here, changed ones, and those that were here already. */
export interface ImportReport {
  readonly fresh: number
  readonly changed: number
  readonly same: number
  /** How many of each family the file holds. */
  readonly counts: Readonly<Record<DocumentFamily, number>>
}

/** Thirty years of a busy studio's catalogue are smaller. */
const largestFileBytes = 20_000_000

/**
 * Brings in a file of formulas, materials, lots, people, balances and vessels. The whole file is checked before the
 * first document is saved. A document that is here already is passed over, a different one becomes the newest entry of
 * that document's stream; revisions of a formula that are here are never replaced.
 */
export async function importDocuments(app: App, file: Blob): Promise<Result<ImportReport, ImportRefusal>> {
  if (file.size > largestFileBytes) return refuse({ code: 'IMPORT_TOO_LARGE', bytes: file.size })
  const read = readCatalogueFile(await file.text())
  if (!read.ok) return read
  await whenLoaded(app)
  const problem = checkReferences(read.value, app.catalogue)
  if (problem !== null) return refuse(problem)
  return saveAll(app, read.value, planOf(app, read.value))
}

/** The documents of a file's text, whole and sound, or what is wrong and where. */
export function readCatalogueFile(text: string): Result<CatalogueFile, ImportRefusal> {
  const parsed = parse(text)
  if (!parsed.ok) return parsed
  const { format, version } = parsed.value
  if (typeof format !== 'string' || !catalogueFormats.includes(format)) return refuse({ code: 'IMPORT_FOREIGN' })
  if (typeof version !== 'number') return refuse({ code: 'IMPORT_FOREIGN' })
  if (version > catalogueVersion) return refuse({ code: 'IMPORT_NEWER', version })
  const read = readDocument(catalogueFileSchema, parsed.value)
  if (!read.ok) return read
  return Object.values(read.value).every(({ length }) => length === 0) ? refuse({ code: 'IMPORT_EMPTY' }) : read
}

function parse(text: string): Result<Record<string, unknown>, ImportRefusal> {
  try {
    const parsed: unknown = JSON.parse(text.replace(/^\uFEFF/, ''))
    const isObject = typeof parsed === 'object' && parsed !== null && !Array.isArray(parsed)
    return isObject ? accept({ ...parsed }) : refuse({ code: 'IMPORT_FOREIGN' })
  } catch {
    return refuse({ code: 'IMPORT_NOT_JSON' })
  }
}

type Saving = {
  [F in DocumentFamily]: { readonly family: F; readonly document: Documents[F]; readonly isNew: boolean }
}[DocumentFamily]

/** What has to be saved, in an order in which every document follows those it points at. */
function planOf({ catalogue }: App, file: CatalogueFile): Saving[] {
  const plan: Saving[] = []
  const add = (saving: Saving, here: object | undefined) => {
    if (here === undefined || !sameDocument(here, saving.document)) plan.push(saving)
  }
  const each = <F extends DocumentFamily>(
    documents: readonly Documents[F][],
    here: ReadonlyMap<string, Documents[F]>,
    saving: (document: Documents[F], isNew: boolean) => Saving,
  ) => {
    for (const document of documents) add(saving(document, !here.has(document.id)), here.get(document.id))
  }
  each<'person'>(file.people, catalogue.people.value, (document, isNew) => ({ family: 'person', document, isNew }))
  each<'balance'>(file.balances, catalogue.balances.value, (document, isNew) => ({
    family: 'balance',
    document,
    isNew,
  }))
  each<'vessel'>(file.vessels, catalogue.vessels.value, (document, isNew) => ({ family: 'vessel', document, isNew }))
  each<'material'>(file.materials, catalogue.materials.value, (document, isNew) => ({
    family: 'material',
    document,
    isNew,
  }))
  each<'lot'>(file.lots, catalogue.lots.value, (document, isNew) => ({ family: 'lot', document, isNew }))
  each<'formula'>(file.formulas, catalogue.formulas.value, (document, isNew) => ({
    family: 'formula',
    document: mergeFormula(catalogue.formulas.value.get(document.id), document),
    isNew,
  }))
  return plan
}

async function saveAll(
  app: App,
  file: CatalogueFile,
  plan: readonly Saving[],
): Promise<Result<ImportReport, ImportRefusal>> {
  for (const [done, saving] of plan.entries()) {
    const why = await saveOne(app, saving)
    if (why !== null) return refuse({ code: 'IMPORT_STOPPED', done, of: plan.length, why })
  }
  const fresh = plan.filter(({ isNew }) => isNew).length
  const counts = {
    material: file.materials.length,
    lot: file.lots.length,
    formula: file.formulas.length,
    person: file.people.length,
    balance: file.balances.length,
    vessel: file.vessels.length,
  }
  const all = Object.values(counts).reduce((sum, count) => sum + count, 0)
  return accept({ fresh, changed: plan.length - fresh, same: all - plan.length, counts })
}

function saveOne({ catalogue }: App, { family, document }: Saving): Promise<Refusal | null> {
  return catalogue.save(family, document, 'brought in from a file')
}

/** The catalogue as it stands, once it has been read from storage. */
function whenLoaded({ catalogue }: App): Promise<void> {
  return new Promise((resolve) => {
    const stop = effect(() => {
      if (!catalogue.loaded.value) return
      resolve()
      queueMicrotask(() => stop())
    })
  })
}
