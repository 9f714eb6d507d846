import type { Material } from '../../batch/catalogue'
import type { Formula } from '../../batch/formula'
import { catalogueVersion } from '../../batch/schemas/catalogue-file'

/** A file of documents that any tablet can bring in again: a formula with all of its revisions, and its materials. */
export function formulaFile(formula: Formula, materials: ReadonlyMap<string, Material>): string {
  const used = new Set(
    formula.revisions.flatMap(({ phases }) => phases.flatMap(({ lines }) => lines.map(({ materialId }) => materialId))),
  )
  return documentsFile({ materials: [...used].flatMap((id) => materials.get(id) ?? []), formulas: [formula] })
}

export const materialsFile = (materials: readonly Material[]): string => documentsFile({ materials })

const documentsFile = (lists: { readonly materials: readonly Material[]; readonly formulas?: readonly Formula[] }) =>
  `${JSON.stringify({ format: 'pannikin-formulas', version: catalogueVersion, ...lists }, null, 2)}\n`
