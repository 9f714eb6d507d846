import type { ActiveClass } from '../catalogue'
import type { FormulaCheck } from './check'
import { type Checked, type CheckedLine, tidy } from './lines'
import { hasPart, isFor, type Trait } from './textbook'

const classes: readonly ActiveClass[] = [
  'anionic',
  'amphoteric',
  'non-ionic',
  'cationic surfactant',
  'cationic polymer',
]

/** Active matter by class and in all, and charges that do not get on with each other. */
export const surfactantChecks = (checked: Checked): readonly FormulaCheck[] => [
  ...activeMatter(checked),
  ...chargeChecks(checked),
]

function activeMatter({ lines }: Checked): FormulaCheck[] {
  const byClass = classes.flatMap((kind) => {
    const share = lines.reduce((sum, { material, share }) => {
      return material.activeMatter?.class === kind ? sum + share * material.activeMatter.fraction : sum
    }, 0)
    return share > 0 ? [{ class: kind, share: tidy(share) }] : []
  })
  const unknown = lines.filter(({ material }) => material.activeMatter === undefined && isFor(material, 'surfactant'))
  const names = [...new Set(unknown.map(({ material }) => material.name))]
  // A conditioning polymer is active matter of its class, but no washing active: it is told apart from the sum.
  const total = tidy(byClass.reduce((sum, each) => (each.class === 'cationic polymer' ? sum : sum + each.share), 0))
  return [
    ...(names.length > 0
      ? [{ code: 'ACTIVE_UNKNOWN', severity: 'missing', names, source: { kind: 'own data' } } as const]
      : []),
    ...(byClass.length > 0
      ? [
          {
            code: 'ACTIVE_MATTER',
            severity: 'note',
            byClass,
            figure: { value: total, unit: 'share' },
            source: { kind: 'own data' },
          } as const,
        ]
      : []),
  ]
}

/** By the class its data states; by its INCI names only where none is stated. */
const isOf =
  (kind: ActiveClass, trait: Trait) =>
  ({ material, share }: CheckedLine) =>
    share > 0 && (material.activeMatter ? material.activeMatter.class === kind : hasPart(material, trait))

function chargeChecks({ lines }: Checked): FormulaCheck[] {
  const anionic = lines.find(isOf('anionic', 'anionic'))
  const thickener = lines.find(({ material, share }) => share > 0 && hasPart(material, 'anionicThickener'))
  const surfactant = lines.find(isOf('cationic surfactant', 'cationicSurfactant'))
  const polymer = lines.find(isOf('cationic polymer', 'cationicPolymer'))
  const cationic = surfactant ?? polymer
  const source = { kind: 'textbook' } as const
  const pair = (a: CheckedLine, b: CheckedLine) => ({
    line: b.line.id,
    anionic: a.material.name,
    cationic: b.material.name,
    figure: { value: tidy(b.share * (b.material.activeMatter?.fraction ?? 1)), unit: 'share' } as const,
    source,
  })
  return [
    ...(anionic && surfactant
      ? [{ code: 'ANIONIC_WITH_CATIONIC', severity: 'warn', ...pair(anionic, surfactant) } as const]
      : []),
    ...(anionic && polymer
      ? [{ code: 'ANIONIC_WITH_CATIONIC_POLYMER', severity: 'note', ...pair(anionic, polymer) } as const]
      : []),
    ...(thickener && cationic && thickener !== cationic
      ? [{ code: 'ANIONIC_THICKENER_WITH_CATIONIC', severity: 'warn', ...pair(thickener, cationic) } as const]
      : []),
  ]
}
