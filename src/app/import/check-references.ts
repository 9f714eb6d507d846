import type { CatalogueFile } from '../../batch/schemas/catalogue-file'
import { checkRevision, type RevisionProblem } from '../../batch/schemas/check-revision'
import type { Catalogue } from '../app'

export type ImportProblem =
  | { readonly code: 'IMPORT_ID_TWICE'; readonly path: string; readonly id: string }
  | { readonly code: 'IMPORT_LOT_MATERIAL_UNKNOWN'; readonly path: string; readonly lot: string }
  | {
      readonly code: 'IMPORT_REVISION_TWICE'
      readonly path: string
      readonly formula: string
      readonly revision: number
    }
  | {
      readonly code: 'IMPORT_FORMULA_BROKEN'
      readonly path: string
      readonly formula: string
      readonly revision: number
      readonly problem: RevisionProblem
    }

/** The first thing that does not hold together: within the file, or with the materials that are here already. */
export function checkReferences(
  file: CatalogueFile,
  { materials }: Pick<Catalogue, 'materials'>,
): ImportProblem | null {
  const names = new Map([...materials.value, ...file.materials.map((each) => [each.id, each] as const)])
  return idTwice(file) ?? lotWithoutMaterial(file, names) ?? brokenFormula(file, (id) => names.get(id)?.name ?? null)
}

function idTwice(file: CatalogueFile): ImportProblem | null {
  for (const [list, documents] of Object.entries(file) as [string, readonly { readonly id: string }[]][]) {
    const seen = new Set<string>()
    for (const [index, { id }] of documents.entries()) {
      if (seen.has(id)) return { code: 'IMPORT_ID_TWICE', path: `${list}[${index}].id`, id }
      seen.add(id)
    }
  }
  return null
}

function lotWithoutMaterial({ lots }: CatalogueFile, materials: ReadonlyMap<string, unknown>): ImportProblem | null {
  const index = lots.findIndex(({ materialId }) => !materials.has(materialId))
  const lot = lots[index]
  return lot ? { code: 'IMPORT_LOT_MATERIAL_UNKNOWN', path: `lots[${index}].materialId`, lot: lot.code } : null
}

function brokenFormula({ formulas }: CatalogueFile, nameOf: (id: string) => string | null): ImportProblem | null {
  for (const [index, { name, revisions }] of formulas.entries()) {
    const numbers = new Set<number>()
    for (const [at, revision] of revisions.entries()) {
      const where = { path: `formulas[${index}].revisions[${at}]`, formula: name, revision: revision.number }
      if (numbers.has(revision.number)) return { code: 'IMPORT_REVISION_TWICE', ...where }
      numbers.add(revision.number)
      const [problem] = checkRevision(revision, nameOf)
      if (problem) return { code: 'IMPORT_FORMULA_BROKEN', ...where, problem }
    }
  }
  return null
}
