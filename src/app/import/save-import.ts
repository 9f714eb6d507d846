import { materialSchema } from '../../batch/schemas/catalogue'
import { checkRevision, type RevisionProblem } from '../../batch/schemas/check-revision'
import { formulaSchema } from '../../batch/schemas/formula'
import { type DocumentRefusal, readDocument } from '../../batch/schemas/read-document'
import { accept, type Result, refuse } from '../../trade/result'
import type { App } from '../app'
import type { Refusal } from '../refusals'
import type { ImportedFormula } from './formula-from-table'

export type SaveImportRefusal =
  | DocumentRefusal
  | RevisionProblem
  /** Storage gave way: what is in stays in, and saving again goes on from there. */
  | { readonly code: 'SAVING_STOPPED'; readonly done: number; readonly of: number; readonly why: Refusal }

/**
 * Saves new materials, then the formula that needs them. All of it is checked before the first is written. A material
 * that an earlier try has written is not written again.
 */
export async function saveImport(
  { catalogue }: Pick<App, 'catalogue'>,
  { formula, materials }: ImportedFormula,
): Promise<Result<string, SaveImportRefusal>> {
  const broken = firstWrong(catalogue, { formula, materials })
  if (broken !== null) return refuse(broken)
  const of = materials.length
  const reason = 'brought in from a spreadsheet'
  for (const [done, material] of materials.entries()) {
    if (catalogue.materials.value.has(material.id)) continue
    const why = await catalogue.save('material', material, reason)
    if (why !== null) return refuse({ code: 'SAVING_STOPPED', done, of, why })
  }
  const why = await catalogue.save('formula', formula, reason)
  return why === null ? accept(formula.id) : refuse({ code: 'SAVING_STOPPED', done: of, of, why })
}

function firstWrong(
  { materials: here }: App['catalogue'],
  { formula, materials }: ImportedFormula,
): DocumentRefusal | RevisionProblem | null {
  for (const material of materials) {
    const read = readDocument(materialSchema, material)
    if (!read.ok) return read.refusal
  }
  const read = readDocument(formulaSchema, formula)
  if (!read.ok) return read.refusal
  const nameOf = (id: string) => (materials.find((each) => each.id === id) ?? here.value.get(id))?.name ?? null
  return formula.revisions.flatMap((revision) => checkRevision(revision, nameOf))[0] ?? null
}
