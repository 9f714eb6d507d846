import { allergenLimit, allergensOf } from '../allergens'
import type { FormulaCheck } from './check'
import type { Checked } from './lines'

/** What to beware of at the bench, and which allergens the label will have to name. */
export const safetyChecks = (checked: Checked): readonly FormulaCheck[] => [
  ...hazardChecks(checked),
  ...allergenChecks(checked),
]

function hazardChecks({ byMaterial }: Checked): FormulaCheck[] {
  return [...byMaterial.values()].flatMap(([first]): FormulaCheck[] => {
    const hazards = first?.material.hazards
    if (!first || !hazards) return []
    const about = { line: first.line.id, name: first.material.name, source: { kind: 'own data' } as const }
    return [{ code: 'HAZARD', severity: 'note', ...hazards, ...about }]
  })
}

function allergenChecks({ lines, contact }: Checked): FormulaCheck[] {
  const { named, unknown } = allergensOf(lines, contact)
  const limit = { max: allergenLimit[contact], unit: 'share' } as const
  const source = { kind: 'standard', name: 'Regulation (EC) 1223/2009, Annex III' } as const
  const most = named[0]?.fraction
  return [
    ...(most === undefined
      ? []
      : [
          {
            code: 'ALLERGENS_NAMED',
            severity: 'note',
            allergens: named,
            figure: { value: most, unit: 'share' },
            limit,
            source,
          } as const,
        ]),
    ...unknown.map(
      ({ material, share, names }): FormulaCheck => ({
        code: 'ALLERGENS_UNKNOWN',
        severity: 'missing',
        ...lineOf(lines, material.id),
        name: material.name,
        allergens: names,
        figure: { value: share, unit: 'share' },
        limit,
        source,
      }),
    ),
  ]
}

function lineOf(lines: Checked['lines'], materialId: string): { line?: string } {
  const line = lines.find(({ material }) => material.id === materialId)?.line.id
  return line === undefined ? {} : { line }
}
