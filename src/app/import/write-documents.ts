import type { Material } from '../../batch/catalogue'
import type { Formula } from '../../batch/formula'
import { catalogueVersion } from '../../batch/schemas/catalogue-file'

/** A file of documents that any tablet can bring in again: a formula with all of its revisions, and its materials. */
export function formulaFile(formula: Formula, materials: ReadonlyMap<string, Material>): string {
  const used = new Set(
    formula.revisions.flatMap(({ phases }) => phases.flatMap(({ lines }) => lines.map(({ materialId }) => materialId))),
  )
  const lists = { materials: [...used].flatMap((id) => materials.get(id) ?? []), formulas: [formula] }
  return `${JSON.stringify({ format: 'pannikin-formulas', version: catalogueVersion, ...lists }, null, 2)}\n`
}
