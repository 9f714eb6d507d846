import { accept, type Result, refuse } from '../trade/result'
import { planTargets, type TargetLine, type TargetPlan, type TargetRefusal } from '../trade/targets'
import type { Balance, Lot } from './catalogue'
import type { BatchHeader, BatchVessel } from './header'
import type { Plan, PlannedLine, PlannedStep } from './plan'
import type { Step } from './step'
import { weighUpFirst } from './weigh-up'

export type PlanRefusal =
  | TargetRefusal
  | { readonly code: 'NO_BALANCE' }
  | { readonly code: 'UNKNOWN_MATERIAL'; readonly line: string }
  | { readonly code: 'UNKNOWN_LINE'; readonly step: string; readonly line: string }
  | { readonly code: 'UNKNOWN_VESSEL'; readonly step: string; readonly vessel: string }
  | { readonly code: 'UNKNOWN_CHECK'; readonly step: string; readonly check: string }

/**
 * Revision + size + lots + vessels → steps and targets. Masses are exact: the targets of all lines with what is held
 * back make the batch size to the microgram.
 */
export function planBatch(header: BatchHeader): Result<Plan, PlanRefusal> {
  const lines = plannedLines(header)
  if (!lines.ok) return lines
  const targets = planTargets([...lines.value.values()].map(toTargetLine), header.sizeUg)
  if (!targets.ok) return targets
  const withTargets = new Map<string, PlannedLine>()
  for (const [id, planned] of lines.value) {
    const target = targets.value.lines.get(id)
    if (target) withTargets.set(id, { ...planned, targetUg: target.targetUg, fraction: target.fraction })
  }
  return planSteps(header, withTargets, targets.value)
}

/** A lot's active matter against what the line was planned for; 1 where either is unknown. */
export function assayRatio(planned: PlannedLine, lotId: string | undefined): number {
  const lot = planned.lots.find((each) => each.id === lotId)
  const plannedFor = planned.lots[0]?.assay ?? planned.line.assayAssumed
  if (planned.line.assayAssumed === undefined || lot?.assay === undefined || plannedFor === undefined) return 1
  return lot.assay / plannedFor
}

/** The plan, one of whose lines may now be taken from these lots too. */
export function withLots(plan: Plan, lineId: string, opened: readonly Lot[]): Plan {
  const planned = plan.lines.get(lineId)
  if (!planned || opened.length === 0) return plan
  const line = { ...planned, lots: [...planned.lots, ...opened] }
  const steps = plan.steps.map((step) => (step.line === planned ? { ...step, line } : step))
  return {
    ...plan,
    steps,
    byId: new Map(steps.map((step) => [step.id, step])),
    lines: new Map([...plan.lines, [lineId, line]]),
  }
}

/** Vessels that a step needs: its own, and the one that it empties. */
export function vesselsOfStep(step: Step): readonly string[] {
  switch (step.kind) {
    case 'charge':
      return [step.vessel, step.cup]
    case 'combine':
      return [step.vessel, step.from]
    default:
      return [step.vessel]
  }
}

function plannedLines(header: BatchHeader): Result<Map<string, PlannedLine>, PlanRefusal> {
  const fallback = header.balances[0]
  if (!fallback) return refuse({ code: 'NO_BALANCE' })
  const materials = new Map(header.materials.map((material) => [material.id, material]))
  const lots = new Map(header.lots.map((each) => [each.line, each.lots]))
  const balances = new Map(header.balances.map((balance) => [balance.id, balance]))
  const balanceOf = new Map(header.balanceOfLine.map((each) => [each.line, balances.get(each.balance)]))
  const lines = new Map<string, PlannedLine>()
  for (const phase of header.revision.phases) {
    for (const line of phase.lines) {
      const material = materials.get(line.materialId)
      if (!material) return refuse({ code: 'UNKNOWN_MATERIAL', line: line.id })
      const balance: Balance = balanceOf.get(line.id) ?? fallback
      const ofLine: readonly Lot[] = lots.get(line.id) ?? []
      lines.set(line.id, { line, phase: phase.letter, material, balance, lots: ofLine, fraction: 0, targetUg: 0 })
    }
  }
  return accept(lines)
}

function toTargetLine(planned: PlannedLine): TargetLine {
  const { line, lots, balance } = planned
  const lotAssay = lots[0]?.assay
  return {
    id: line.id,
    amount: line.amount,
    stepUg: balance.stepUg,
    ...(line.assayAssumed === undefined ? {} : { assayAssumed: line.assayAssumed }),
    ...(lotAssay === undefined || line.assayAssumed === undefined ? {} : { lotAssay }),
  }
}

function planSteps(
  header: BatchHeader,
  lines: ReadonlyMap<string, PlannedLine>,
  targets: TargetPlan,
): Result<Plan, PlanRefusal> {
  const direct = new Map(header.vessels.map((vessel) => [vessel.id, vessel]))
  const bad = firstBadStep(header, lines, direct)
  if (bad) return refuse(bad)
  const arranged =
    header.mode === 'weigh-up-first'
      ? weighUpFirst(header.revision.procedure, lines)
      : { steps: header.revision.procedure, cups: [], added: new Map<string, string>() }
  const vessels = new Map<string, BatchVessel>(direct)
  for (const cup of arranged.cups) vessels.set(cup.id, cup)
  const inAnyOrder = anyOrderOf(lines, arranged.added)
  const ofSteps = arranged.steps.map((step) => ({ step, vessels: vesselsOfStep(step) }))
  const steps = arranged.steps.map((step, index): PlannedStep => {
    const line = lineOfStep(step, lines)
    const targetUg = line === undefined ? undefined : targetOf(step, line, targets)
    return {
      id: step.id,
      step,
      index,
      waitsFor: waitsFor(ofSteps, index, inAnyOrder),
      ...(line === undefined ? {} : { line }),
      ...(targetUg === undefined ? {} : { targetUg }),
      ...(arranged.added.has(step.id) ? { weighUp: true } : {}),
    }
  })
  return accept({
    totalUg: targets.totalUg,
    heldBackUg: targets.heldBackUg,
    steps,
    byId: new Map(steps.map((step) => [step.id, step])),
    lines,
    vessels,
    phases: header.revision.phases.map(({ letter, name }) => ({ letter, name })),
  })
}

function firstBadStep(
  header: BatchHeader,
  lines: ReadonlyMap<string, PlannedLine>,
  vessels: ReadonlyMap<string, BatchVessel>,
): PlanRefusal | null {
  const checks = new Set(header.revision.specification.map((check) => check.id))
  for (const step of header.revision.procedure) {
    const missing = vesselsOfStep(step).find((vessel) => !vessels.has(vessel))
    if (missing !== undefined) return { code: 'UNKNOWN_VESSEL', step: step.id, vessel: missing }
    if ('line' in step && !lines.has(step.line)) return { code: 'UNKNOWN_LINE', step: step.id, line: step.line }
    if ('check' in step && !checks.has(step.check)) return { code: 'UNKNOWN_CHECK', step: step.id, check: step.check }
  }
  return null
}

const lineOfStep = (step: Step, lines: ReadonlyMap<string, PlannedLine>): PlannedLine | undefined =>
  step.kind === 'weigh' || step.kind === 'adjust' ? lines.get(step.line) : undefined

function targetOf(step: Step, planned: PlannedLine, targets: TargetPlan): number | undefined {
  const target = targets.lines.get(planned.line.id)
  if (planned.line.amount.kind !== 'qs') return target?.targetUg
  return target?.portions?.find((portion) => portion.step === step.id)?.targetUg
}

/**
 * A step waits for the earlier steps of its own vessels and for `after`. Weighings of one phase into one vessel, and
 * the tipping in of their cups, go in any order, unless their line is of fixed order.
 */
function waitsFor(
  steps: readonly { readonly step: Step; readonly vessels: readonly string[] }[],
  index: number,
  inAnyOrder: InAnyOrder,
): readonly string[] {
  const own = steps[index]
  if (own === undefined) return []
  const waits = new Set<string>()
  for (const { step, vessels } of steps.slice(0, index)) {
    if (vessels.some((vessel) => own.vessels.includes(vessel)) && !inAnyOrder(own.step, step)) waits.add(step.id)
  }
  for (const id of own.step.after ?? []) waits.add(id)
  return [...waits]
}

type InAnyOrder = (step: Step, other: Step) => boolean

function anyOrderOf(lines: ReadonlyMap<string, PlannedLine>, tipIns: ReadonlyMap<string, string>): InAnyOrder {
  const lineOf = (step: Step): string | undefined => (step.kind === 'weigh' ? step.line : tipIns.get(step.id))
  return (step, other) => {
    const line = lineOf(step)
    if (line === undefined || lineOf(other) === undefined) return false
    if (step.phase !== other.phase || step.vessel !== other.vessel) return false
    return lines.get(line)?.line.fixedOrder !== true
  }
}
