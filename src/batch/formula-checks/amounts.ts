import { fractionsOf } from '../schemas/check-revision'
import { countsFor } from '../shared-limits'
import type { FormulaCheck } from './check'
import { type Checked, type CheckedLine, shareOf, tidy } from './lines'

/** Fractions closer than this are the same: what binary sums can be off by. */
const same = 1e-9

/** The total, each material against its use level, and the limits over several lines. */
export const amountChecks = (checked: Checked): readonly FormulaCheck[] => [
  ...totalChecks(checked),
  ...[...checked.byMaterial.values()].flatMap(useLevelChecks),
  ...sharedChecks(checked),
]

function totalChecks({ revision, unknown }: Checked): FormulaCheck[] {
  const lines = revision.phases.flatMap((phase) => phase.lines)
  const source = { kind: 'first principles' } as const
  if (lines.length === 0) return [{ code: 'LINES_NONE', severity: 'stop', source }]
  const { stated, qs } = fractionsOf(lines)
  const figure = { value: stated, unit: 'share' } as const
  const whole = { min: 1, max: 1, unit: 'share' } as const
  const fillers = lines.filter(({ amount }) => amount.kind === 'qs')
  const gone = unknown.map(
    ({ id, materialId }): FormulaCheck => ({
      code: 'MATERIAL_UNKNOWN',
      severity: 'stop',
      line: id,
      materialId,
      source,
    }),
  )
  if (fillers.length > 1) return [{ code: 'QS_TWICE', severity: 'stop', figure, source }, ...gone]
  if (qs !== null && qs <= 0)
    return [{ code: 'QS_NEGATIVE', severity: 'stop', figure, limit: { max: 1, unit: 'share' }, source }, ...gone]
  if (qs === null && Math.abs(stated - 1) > same)
    return [{ code: 'TOTAL_OFF', severity: 'stop', figure, limit: whole, source }, ...gone]
  return qs === null ? [{ code: 'QS_NONE', severity: 'note', source }, ...gone] : gone
}

/** A preservative has sentences of its own: too little of it is as wrong as too much. */
function useLevelChecks(lines: readonly CheckedLine[]): FormulaCheck[] {
  const [first] = lines
  const level = first?.material.useLevel
  if (!first || level === undefined) return []
  const share = tidy(shareOf(lines))
  const preserves = first.material.function.toLowerCase().includes('preserv')
  const said = {
    name: first.material.name,
    line: first.line.id,
    figure: { value: share, unit: 'share' },
    limit: { ...level, unit: 'share' },
    source: { kind: 'own data' },
  } as const
  if (share > level.max + same)
    return [{ code: preserves ? 'PRESERVATIVE_STRONG' : 'USE_OVER', severity: 'warn', ...said }]
  if (share < level.min - same)
    return [{ code: preserves ? 'PRESERVATIVE_WEAK' : 'USE_UNDER', severity: 'warn', ...said }]
  const most = tidy(lines.reduce((sum, line) => sum + line.most, 0))
  if (most <= level.max + same) return []
  return [{ code: 'USE_MAY_PASS', severity: 'note', ...said, figure: { value: most, unit: 'share' } }]
}

function sharedChecks({ revision, lines }: Checked): FormulaCheck[] {
  return (revision.sharedLimits ?? []).flatMap(({ name, of, min = 0, max = 1 }): FormulaCheck[] => {
    const share = tidy(lines.reduce((sum, each) => sum + each.share * countsFor(each.material, of), 0))
    const said = {
      name,
      figure: { value: share, unit: 'share' },
      limit: { min, max, unit: 'share' },
      source: { kind: 'formula' },
    } as const
    if (share > max + same) return [{ code: 'SHARED_OVER', severity: 'warn', ...said }]
    return share < min - same ? [{ code: 'SHARED_UNDER', severity: 'warn', ...said }] : []
  })
}
