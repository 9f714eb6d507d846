import type { Bounds, FormulaCheck } from './check'
import { type Checked, type CheckedLine, shareOf, tidy } from './lines'
import { hasPart, isFor, type LegalLimit, legalLimits, partOf, preservativePh } from './textbook'

/** Preservation of what has water in it, and every pH window against the pH that the specification asks for. */
export function phChecks(checked: Checked): readonly FormulaCheck[] {
  const wanted = specifiedPh(checked)
  const groups = [...checked.byMaterial.values()]
  return [
    ...preservativeMissing(checked),
    ...legalLimits.flatMap((limit) => legalCheck(checked, limit)),
    ...notReadAgain(checked),
    ...(wanted === null ? notStated(groups) : groups.flatMap((lines) => windowCheck(lines, wanted))),
  ]
}

/** The pH of the finished product: checked after the rest, else in the last step that reads it, else stated last. */
export function specifiedPh({ revision }: Checked): Bounds | null {
  const stated = revision.specification.filter(({ property, limits }) => property === 'pH' && limits !== undefined)
  const read = revision.procedure.flatMap((step) => ('check' in step ? [step.check] : []))
  const lastRead = stated
    .filter(({ id }) => read.includes(id))
    .sort((a, b) => read.lastIndexOf(a.id) - read.lastIndexOf(b.id))
  const check = stated.find(({ when }) => when === 'after-rest') ?? lastRead.at(-1) ?? stated.at(-1)
  return check?.limits ? { min: check.limits.min ?? 0, max: check.limits.max ?? 14, unit: 'pH' } : null
}

const preserves = ({ material }: CheckedLine): boolean =>
  isFor(material, 'preserv') || hasPart(material, 'preservative')

function preservativeMissing({ lines }: Checked): FormulaCheck[] {
  const water = tidy(lines.reduce((sum, { material, share }) => sum + share * partOf(material, 'water'), 0))
  if (water === 0 || lines.some((line) => preserves(line) && line.share > 0)) return []
  return [
    {
      code: 'PRESERVATIVE_NONE',
      severity: 'warn',
      figure: { value: water, unit: 'share' },
      source: { kind: 'textbook' },
    },
  ]
}

function legalCheck({ lines, contact }: Checked, limit: LegalLimit): FormulaCheck[] {
  let share = 0
  let line: string | undefined
  for (const each of lines) {
    for (const { name, fraction } of each.material.inci) {
      const acid = limit.parts.get(name.trim().toLowerCase())
      if (acid === undefined) continue
      share += each.share * fraction * acid
      line ??= each.line.id
    }
  }
  const max = contact === 'leave-on' ? limit.leaveOn : limit.rinseOff
  if (line === undefined || share <= max + 1e-9) return []
  return [
    {
      code: 'PRESERVATIVE_ABOVE_LAW',
      severity: 'warn',
      line,
      inci: limit.name,
      asAcid: limit.asAcid,
      figure: { value: tidy(share), unit: 'share' },
      limit: { max, unit: 'share' },
      source: { kind: 'standard', name: 'Regulation (EC) 1223/2009, Annex V' },
    },
  ]
}

/** A material's own window; of a preservative without one, that of the textbook. */
function windowOf({ material }: CheckedLine) {
  if (material.phWindow) return { ...material.phWindow, source: { kind: 'own data' } as const }
  const known = material.inci.flatMap(({ name }) => preservativePh.get(name.trim().toLowerCase()) ?? [])
  if (known.length === 0) return null
  const min = Math.max(...known.map((window) => window.min))
  const max = Math.min(...known.map((window) => window.max))
  return { min, max, source: { kind: 'textbook' } as const }
}

function windowCheck(lines: readonly CheckedLine[], wanted: Bounds): FormulaCheck[] {
  const [first] = lines
  const window = first && shareOf(lines) > 0 ? windowOf(first) : null
  if (!first || !window) return []
  const { min, max, source } = window
  const [low, high] = [wanted.min ?? 0, wanted.max ?? 14]
  const apart = high < min || low > max
  if (!apart && low >= min && high <= max) return []
  const said = {
    line: first.line.id,
    name: first.material.name,
    wanted,
    // The end of the specification that is outside, or further outside.
    figure: { value: min - low >= high - max ? low : high, unit: 'pH' },
    limit: { min, max, unit: 'pH' },
    source,
  } as const
  if (preserves(first))
    return apart
      ? [{ code: 'PRESERVATIVE_PH_OUT', severity: 'warn', ...said }]
      : [{ code: 'PRESERVATIVE_PH_PARTLY', severity: 'warn', ...said }]
  return apart ? [{ code: 'PH_OUT', severity: 'warn', ...said }] : [{ code: 'PH_PARTLY', severity: 'note', ...said }]
}

function notStated(groups: readonly (readonly CheckedLine[])[]): FormulaCheck[] {
  const names = groups.flatMap(([first]) => (first && windowOf(first) ? [first.material.name] : []))
  return names.length === 0 ? [] : [{ code: 'PH_NOT_STATED', severity: 'missing', names, source: { kind: 'formula' } }]
}

/** Water that makes up to weight moves the pH: what was adjusted before it is read again. */
function notReadAgain({ revision: { procedure, specification } }: Checked): FormulaCheck[] {
  const phChecksOf = new Set(specification.filter(({ property }) => property === 'pH').map(({ id }) => id))
  const adjustedAt = procedure.findIndex((step) => step.kind === 'adjust' && step.property === 'pH')
  const madeUpAt = procedure.findLastIndex((step) => step.kind === 'make-up')
  const madeUp = procedure[madeUpAt]
  if (adjustedAt === -1 || madeUp === undefined || madeUpAt < adjustedAt) return []
  const isRead = procedure.slice(madeUpAt + 1).some((step) => 'check' in step && phChecksOf.has(step.check))
  if (isRead) return []
  return [{ code: 'PH_NOT_READ_AGAIN', severity: 'warn', step: madeUp.id, source: { kind: 'first principles' } }]
}
