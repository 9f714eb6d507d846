import type { FormulaCheck, MissingData } from './check'
import { type Checked, type CheckedLine, tidy } from './lines'
import { hasPart, isFor, partOf, preservativePh } from './textbook'

const source = { kind: 'own data' } as const

/** What the materials cost, and what nobody has written down about them. */
export const dataChecks = (checked: Checked): readonly FormulaCheck[] => [
  ...missingChecks(checked),
  ...wholeChecks(checked),
  ...costCheck(checked),
]

function costCheck({ lines, revision, sizeUg }: Checked): FormulaCheck[] {
  const priced = lines.filter(({ material }) => material.costPerKg !== undefined)
  if (priced.length === 0) return []
  const perKg = tidy(priced.reduce((sum, { material, share }) => sum + share * (material.costPerKg ?? 0), 0))
  const eachUg = revision.procedure.flatMap((step) => (step.kind === 'fill' && step.eachUg ? [step.eachUg] : [])).at(-1)
  return [
    {
      code: 'COST',
      severity: 'note',
      perBatch: (perKg * sizeUg) / 1e9,
      ...(eachUg === undefined ? {} : { perUnit: (perKg * eachUg) / 1e9 }),
      unpriced: lines.length - priced.length,
      figure: { value: perKg, unit: 'price per kg' },
      source,
    },
  ]
}

/** One saying for each kind of data; plain water needs neither a use level nor a caution. */
function missingChecks({ byMaterial }: Checked): FormulaCheck[] {
  const firsts = [...byMaterial.values()].flatMap(([first]) => (first ? [first] : []))
  return (Object.keys(missing) as MissingData[]).flatMap((what): FormulaCheck[] => {
    const names = firsts.filter(missing[what]).map(({ material }) => material.name)
    return names.length === 0 ? [] : [{ code: 'DATA_MISSING', severity: 'missing', what, names, source }]
  })
}

const isWater = ({ material }: CheckedLine): boolean => partOf(material, 'water') > 0.995

const missing: Readonly<Record<MissingData, (line: CheckedLine) => boolean>> = {
  'INCI names': ({ material }) => material.inci.length === 0,
  'use level': (line) => line.line.amount.kind === 'fraction' && !line.material.useLevel && !isWater(line),
  'pH window': ({ material }) =>
    (isFor(material, 'preserv') || hasPart(material, 'preservative')) &&
    material.phWindow === undefined &&
    !material.inci.some(({ name }) => preservativePh.has(name.trim().toLowerCase())),
  hazards: (line) => line.material.hazards === undefined && !isWater(line),
  price: ({ material }) => material.costPerKg === undefined,
}

/** Constituents that do not come to the whole would put the label in a wrong order. */
function wholeChecks({ byMaterial }: Checked): FormulaCheck[] {
  return [...byMaterial.values()].flatMap(([first]): FormulaCheck[] => {
    const parts = tidy((first?.material.inci ?? []).reduce((sum, { fraction }) => sum + fraction, 0))
    if (!first || first.material.inci.length === 0 || Math.abs(parts - 1) <= 0.005) return []
    return [
      {
        code: 'INCI_NOT_WHOLE',
        severity: 'missing',
        line: first.line.id,
        name: first.material.name,
        figure: { value: parts, unit: 'share' },
        limit: { min: 1, max: 1, unit: 'share' },
        source,
      },
    ]
  })
}
