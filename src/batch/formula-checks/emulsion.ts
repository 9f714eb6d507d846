import type { FormulaCheck } from './check'
import { type Checked, type CheckedLine, tidy } from './lines'
import { isFor, partOf } from './textbook'

/** The emulsifier blend may be this far from what the oils ask for before it is worth a trial. */
const nearEnough = 1

/**
 * The required balance of the oil phase against that of the emulsifier blend, both means by mass (Griffin). A guide for
 * oil-in-water emulsions with non-ionic emulsifiers, and only over what data there is.
 */
export function emulsionChecks({ lines }: Checked): readonly FormulaCheck[] {
  const emulsifiers = lines.filter(({ material, share }) => share > 0 && material.hlb !== undefined)
  const oils = lines.filter(({ material, share }) => share > 0 && isOil(material))
  const known = oils.filter(({ material }) => material.requiredHlb !== undefined)
  const watery = lines.some(({ material, share }) => share > 0 && partOf(material, 'water') > 0)
  if (!watery || oils.length === 0 || !lines.some(({ material }) => isEmulsifier(material))) return []
  const missing = [
    ...oils.filter((line) => !known.includes(line)),
    ...lines.filter(({ material }) => isEmulsifier(material) && material.hlb === undefined),
  ]
  const source = { kind: 'textbook' } as const
  const unknown = missing.map(({ material }) => material.name)
  if (emulsifiers.length === 0 || known.length === 0)
    return [{ code: 'HLB_UNKNOWN', severity: 'missing', names: [...new Set(unknown)], source }]
  const wanted = meanOf(known, ({ material }) => material.requiredHlb ?? 0)
  const blend = meanOf(emulsifiers, ({ material }) => material.hlb ?? 0)
  const apart = Math.abs(blend - wanted) > nearEnough
  return [
    ...(unknown.length > 0
      ? [{ code: 'HLB_UNKNOWN', severity: 'missing', names: [...new Set(unknown)], source } as const]
      : []),
    {
      code: apart ? 'HLB_APART' : 'HLB_GUIDE',
      severity: 'note',
      figure: { value: round(blend), unit: 'HLB' },
      limit: { min: round(wanted - nearEnough), max: round(wanted + nearEnough), unit: 'HLB' },
      known: tidy(sumOf(known) / sumOf(oils)),
      source,
    },
  ]
}

/** What the emulsifiers have to carry: whatever states a required balance, and oils, butters and waxes by function. */
const isOil = (material: CheckedLine['material']): boolean =>
  material.requiredHlb !== undefined ||
  (material.hlb === undefined &&
    !isFor(material, 'emulsifier') &&
    ['emollient', 'oil', 'butter', 'wax'].some((word) => material.function.toLowerCase().split(/\W+/).includes(word)))

/** The balance is a measure of non-ionic emulsifiers; what carries a charge holds its oil by that. */
const isEmulsifier = (material: CheckedLine['material']): boolean =>
  isFor(material, 'emulsifier') && (material.activeMatter === undefined || material.activeMatter.class === 'non-ionic')

const sumOf = (lines: readonly CheckedLine[]): number => lines.reduce((sum, { share }) => sum + share, 0)

const meanOf = (lines: readonly CheckedLine[], of: (line: CheckedLine) => number): number =>
  lines.reduce((sum, line) => sum + line.share * of(line), 0) / sumOf(lines)

const round = (value: number): number => Number(value.toFixed(1))
