import type { Line, Revision } from '../formula'
import type { Step } from '../step'

/** What keeps a revision from being weighed. Names are what a person knows the thing by; `step` counts from 1. */
export type RevisionProblem =
  | { readonly code: 'FORMULA_NO_LINES' | 'FORMULA_NO_VESSEL' }
  | { readonly code: 'FORMULA_NOT_WHOLE'; readonly total: number }
  | { readonly code: 'FORMULA_TWO_QS'; readonly names: readonly string[] }
  | { readonly code: 'FORMULA_QS_NEGATIVE'; readonly name: string; readonly others: number }
  | { readonly code: 'FORMULA_QS_TWO_RESTS'; readonly name: string }
  | { readonly code: 'FORMULA_QS_TOO_SMALL'; readonly name: string; readonly left: number; readonly asked: number }
  | { readonly code: 'LINE_MATERIAL_UNKNOWN'; readonly phase: string; readonly materialId: string }
  | {
      readonly code: 'LINE_NOT_WEIGHED' | 'LINE_NOT_ADJUSTED' | 'LINE_OUT_OF_RANGE' | 'LINE_EXPECTED_OUT'
      readonly name: string
    }
  | { readonly code: 'LINE_WEIGHED_TWICE'; readonly name: string }
  | { readonly code: 'STEP_LINE_MISSING' | 'STEP_CHECK_MISSING'; readonly step: number; readonly title: string }
  | { readonly code: 'STEP_VESSEL_MISSING'; readonly step: number; readonly title: string }
  | { readonly code: 'STEP_AFTER_MISSING' | 'STEP_AFTER_LOOP'; readonly step: number; readonly title: string }
  | { readonly code: 'STEP_INTO_ITSELF'; readonly step: number; readonly title: string }
  | { readonly code: 'FORMULA_ID_TWICE'; readonly id: string }

/** What binary fractions can be off by; anything more was typed. */
const wholeWithin = 1e-9

/** What stands against a revision, in the order of its reading; empty where it can be weighed. */
export function checkRevision(revision: Revision, nameOf: (materialId: string) => string | null): RevisionProblem[] {
  const lines = revision.phases.flatMap(({ lines }) => lines)
  if (lines.length === 0) return [{ code: 'FORMULA_NO_LINES' }]
  const name = (line: Line) => nameOf(line.materialId) ?? line.materialId
  return [
    ...(revision.vessels.length === 0 ? [{ code: 'FORMULA_NO_VESSEL' } as const] : []),
    ...unknownMaterials(revision, nameOf),
    ...checkSum(lines, name),
    ...lines.filter(isOutOfRange).map((line) => ({ code: 'LINE_OUT_OF_RANGE', name: name(line) }) as const),
    ...lines.filter(isUnordered).map((line) => ({ code: 'LINE_EXPECTED_OUT', name: name(line) }) as const),
    ...lines.flatMap((line) => checkSteps(line, revision.procedure, name(line))),
    ...checkProcedure(revision),
    ...twice(revision).map((id) => ({ code: 'FORMULA_ID_TWICE', id }) as const),
  ]
}

/** Fractions of the lines: the q.s. line takes what the others, as needed ones as expected, leave. */
export function fractionsOf(lines: readonly Line[]): { readonly stated: number; readonly qs: number | null } {
  const stated = lines.reduce((sum, { amount }) => {
    if (amount.kind === 'fraction') return sum + amount.fraction
    return amount.kind === 'as-needed' ? sum + amount.expected : sum
  }, 0)
  const tidy = Number(stated.toFixed(12))
  return { stated: tidy, qs: lines.some(({ amount }) => amount.kind === 'qs') ? Number((1 - tidy).toFixed(12)) : null }
}

function unknownMaterials(revision: Revision, nameOf: (materialId: string) => string | null): RevisionProblem[] {
  return revision.phases.flatMap(({ letter, lines }) =>
    lines
      .filter(({ materialId }) => nameOf(materialId) === null)
      .map(({ materialId }) => ({ code: 'LINE_MATERIAL_UNKNOWN', phase: letter, materialId }) as const),
  )
}

function checkSum(lines: readonly Line[], name: (line: Line) => string): RevisionProblem[] {
  const { stated, qs } = fractionsOf(lines)
  const fillers = lines.filter(({ amount }) => amount.kind === 'qs')
  if (fillers.length > 1) return [{ code: 'FORMULA_TWO_QS', names: fillers.map(name) }]
  const [filler] = fillers
  if (filler === undefined || qs === null || filler.amount.kind !== 'qs')
    return Math.abs(stated - 1) > wholeWithin ? [{ code: 'FORMULA_NOT_WHOLE', total: stated }] : []
  if (qs <= 0) return [{ code: 'FORMULA_QS_NEGATIVE', name: name(filler), others: stated }]
  const { portions, heldBack } = filler.amount
  if (portions.filter((portion) => 'rest' in portion).length > 1)
    return [{ code: 'FORMULA_QS_TWO_RESTS', name: name(filler) }]
  const expected = lines.reduce((sum, { amount }) => sum + (amount.kind === 'as-needed' ? amount.expected : 0), 0)
  const fixed = portions.reduce((sum, portion) => sum + ('fraction' in portion ? portion.fraction : 0), 0)
  const asked = fixed + (heldBack === undefined ? 0 : heldBack + expected)
  return asked > qs + wholeWithin
    ? [{ code: 'FORMULA_QS_TOO_SMALL', name: name(filler), left: qs, asked: Number(asked.toFixed(12)) }]
    : []
}

function isOutOfRange({ amount, range }: Line): boolean {
  if (range === undefined || amount.kind === 'qs') return false
  const fraction = amount.kind === 'fraction' ? amount.fraction : amount.expected
  return fraction < range.min || fraction > range.max
}

const isUnordered = ({ amount }: Line): boolean =>
  amount.kind === 'as-needed' && !(amount.min <= amount.expected && amount.expected <= amount.max)

function checkSteps(line: Line, procedure: readonly Step[], name: string): RevisionProblem[] {
  const weighs = procedure.filter((step) => step.kind === 'weigh' && step.line === line.id).length
  const others = procedure.filter(
    (step) => (step.kind === 'adjust' || step.kind === 'make-up') && step.line === line.id,
  )
  switch (line.amount.kind) {
    case 'as-needed':
      return others.length + weighs === 0 ? [{ code: 'LINE_NOT_ADJUSTED', name }] : []
    case 'qs':
      return weighs + others.length === 0 ? [{ code: 'LINE_NOT_WEIGHED', name }] : []
    case 'fraction':
      if (weighs > 1) return [{ code: 'LINE_WEIGHED_TWICE', name }]
      return weighs === 0 ? [{ code: 'LINE_NOT_WEIGHED', name }] : []
  }
}

function checkProcedure({ phases, procedure, vessels, specification }: Revision): RevisionProblem[] {
  const lineIds = new Set(phases.flatMap(({ lines }) => lines.map(({ id }) => id)))
  const vesselIds = new Set(vessels.map(({ id }) => id))
  const checkIds = new Set(specification.map(({ id }) => id))
  const stepIds = new Set(procedure.map(({ id }) => id))
  const looped = loopedSteps(procedure)
  return procedure.flatMap((step, index): RevisionProblem[] => {
    const about = { step: index + 1, title: step.title ?? step.kind }
    const problems: RevisionProblem[] = []
    const used = vesselsOf(step)
    if (used.some((id) => !vesselIds.has(id))) problems.push({ code: 'STEP_VESSEL_MISSING', ...about })
    if (new Set(used).size < used.length) problems.push({ code: 'STEP_INTO_ITSELF', ...about })
    if ('line' in step && !lineIds.has(step.line)) problems.push({ code: 'STEP_LINE_MISSING', ...about })
    if ('check' in step && !checkIds.has(step.check)) problems.push({ code: 'STEP_CHECK_MISSING', ...about })
    if (step.after?.some((id) => !stepIds.has(id))) problems.push({ code: 'STEP_AFTER_MISSING', ...about })
    if (looped.has(step.id)) problems.push({ code: 'STEP_AFTER_LOOP', ...about })
    return problems
  })
}

function vesselsOf(step: Step): string[] {
  if (step.kind === 'charge') return [step.vessel, step.cup]
  return step.kind === 'combine' ? [step.vessel, step.from] : [step.vessel]
}

/** Steps that wait, through `after` and the order of their vessel, for a step that waits for them. */
function loopedSteps(procedure: readonly Step[]): Set<string> {
  const waits = new Map<string, string[]>()
  const lastOf = new Map<string, string>()
  for (const step of procedure) {
    const own = vesselsOf(step).flatMap((vessel) => lastOf.get(vessel) ?? [])
    waits.set(step.id, [...own, ...(step.after ?? [])])
    for (const vessel of vesselsOf(step)) lastOf.set(vessel, step.id)
  }
  const free = new Set<string>()
  const isFree = ([id, before]: [string, string[]]) =>
    !free.has(id) && before.every((b) => free.has(b) || !waits.has(b))
  for (let found = [...waits].filter(isFree); found.length > 0; found = [...waits].filter(isFree))
    for (const [id] of found) free.add(id)
  return new Set([...waits.keys()].filter((id) => !free.has(id)))
}

function twice({ phases, procedure, vessels, specification }: Revision): string[] {
  const families = [phases.flatMap(({ lines }) => lines), procedure, vessels, specification]
  return families.flatMap((family) => {
    const ids = family.map(({ id }) => id)
    return [...new Set(ids.filter((id, index) => ids.indexOf(id) !== index))]
  })
}
