import type { Amount } from './amount'
import { over, type Ratio, ratioOf, times } from './decimal'
import { fractionOf, type Micrograms } from './mass'
import { type Portioned, portionQs } from './portions'
import { accept, type Result, refuse } from './result'

/** A line of the formula, the assay the formula assumes and that of the lot, and the balance it is weighed on. */
export interface TargetLine {
  readonly id: string
  readonly amount: Amount
  readonly assayAssumed?: number
  readonly lotAssay?: number
  /** Readability of that balance. */
  readonly stepUg: Micrograms
}

export interface LineTarget {
  /** What the line comes to in all; for q.s. with what is held back. */
  readonly targetUg: Micrograms
  /** The step that shows every target of this line without loss, so that shown figures add up. */
  readonly shownStepUg: Micrograms
  /** Of the finished batch, corrected for assay, not rounded to a balance. */
  readonly fraction: number
  /** The parts of the q.s. line; they and what is held back sum to its target. */
  readonly portions?: readonly { readonly step: string; readonly targetUg: Micrograms }[]
}

export interface TargetPlan {
  /** Sum of the targets: the batch size, but for the assay differences of a formula that has no q.s. line. */
  readonly totalUg: Micrograms
  /** Of the q.s. line, kept for rinses, adjusters and make-up; 0 where nothing is. */
  readonly heldBackUg: Micrograms
  readonly lines: ReadonlyMap<string, LineTarget>
}

export type TargetRefusal =
  | { readonly code: 'SIZE_BAD' }
  | { readonly code: 'FRACTION_BAD'; readonly id: string }
  | { readonly code: 'ASSAY_BAD'; readonly id: string }
  | { readonly code: 'TOTAL_NOT_100'; readonly total: number }
  | { readonly code: 'TWO_QS'; readonly ids: readonly string[] }
  | { readonly code: 'QS_NEGATIVE'; readonly shortUg: Micrograms }
  | {
      readonly code: 'TARGET_ROUNDS_TO_ZERO'
      readonly id: string
      readonly targetUg: Micrograms
      readonly stepUg: Micrograms
    }

/** Σ of the stated fractions, with the expected amounts of as-needed lines; q.s. lines count nothing. */
export const sumOfFractions = (lines: readonly { readonly amount: Amount }[]): number =>
  lines.reduce((sum, { amount }) => sum + statedFraction(amount), 0)

/**
 * Turns a formula into masses that sum to the batch size to the last microgram. A line is its fraction × size ÷
 * (assay of the lot ÷ assay assumed), rounded once to its balance; q.s. is what the others leave, so a difference of
 * assay comes off it. Without q.s. the largest line takes the roundings.
 */
export function planTargets(lines: readonly TargetLine[], sizeUg: Micrograms): Result<TargetPlan, TargetRefusal> {
  const bad = badInput(lines, sizeUg) ?? badTotal(lines) ?? badRounding(lines, sizeUg)
  if (bad) return refuse(bad)
  const targets = new Map(lines.map((line) => [line.id, targetOf(line, sizeUg)]))
  const qs = lines.find(({ amount }) => amount.kind === 'qs')
  return qs ? withQs(lines, qs, targets, sizeUg) : accept(withoutQs(lines, targets, sizeUg))
}

function withQs(
  lines: readonly TargetLine[],
  qs: TargetLine,
  targets: Map<string, LineTarget>,
  sizeUg: Micrograms,
): Result<TargetPlan, TargetRefusal> {
  const others = lines.filter((line) => line !== qs)
  const targetUg = sizeUg - sumOf(others, targets)
  if (targetUg <= 0) return refuse({ code: 'QS_NEGATIVE', shortUg: -targetUg })
  const adjusters = others.filter(({ amount }) => amount.kind === 'as-needed')
  const parted = portionQs(qs, targetUg, sizeUg, sumOf(adjusters, targets))
  if (!parted.ok) return parted
  const finestUg = others.reduce((finest, { stepUg }) => Math.min(finest, stepUg), qs.stepUg)
  targets.set(qs.id, qsTarget(parted.value, targetUg, finestUg, 1 - sumOfPlanned(others)))
  return accept({ totalUg: sizeUg, heldBackUg: parted.value.heldBackUg, lines: targets })
}

/** The q.s. line carries the roundings of all the others, so it is shown as finely as the finest of them. */
function qsTarget(parted: Portioned, targetUg: Micrograms, shownStepUg: Micrograms, fraction: number): LineTarget {
  return { targetUg, shownStepUg, fraction, ...(parted.portions.length > 0 ? { portions: parted.portions } : {}) }
}

function withoutQs(lines: readonly TargetLine[], targets: Map<string, LineTarget>, sizeUg: Micrograms): TargetPlan {
  const uncorrectedUg = lines.reduce((sum, line) => sum + plainTarget(line, sizeUg), 0)
  const [largest] = [...targets].sort(([, a], [, b]) => b.targetUg - a.targetUg)
  if (largest) {
    const [id, target] = largest
    const shownStepUg = lines.reduce((finest, { stepUg }) => Math.min(finest, stepUg), target.shownStepUg)
    targets.set(id, { ...target, shownStepUg, targetUg: target.targetUg + sizeUg - uncorrectedUg })
  }
  return { totalUg: sumOf(lines, targets), heldBackUg: 0, lines: targets }
}

function badInput(lines: readonly TargetLine[], sizeUg: Micrograms): TargetRefusal | undefined {
  if (!Number.isSafeInteger(sizeUg) || sizeUg <= 0) return { code: 'SIZE_BAD' }
  for (const { id, amount, assayAssumed = 1, lotAssay = 1 } of lines) {
    if (!isSound(amount)) return { code: 'FRACTION_BAD', id }
    if (!(isShare(assayAssumed) && isShare(lotAssay))) return { code: 'ASSAY_BAD', id }
  }
  const ids = lines.filter(({ amount }) => amount.kind === 'qs').map(({ id }) => id)
  return ids.length > 1 ? { code: 'TWO_QS', ids } : undefined
}

function badTotal(lines: readonly TargetLine[]): TargetRefusal | undefined {
  const total = sumOfFractions(lines)
  if (lines.some(({ amount }) => amount.kind === 'qs')) return undefined
  return Math.abs(total - 1) > 1e-9 ? { code: 'TOTAL_NOT_100', total } : undefined
}

function badRounding(lines: readonly TargetLine[], sizeUg: Micrograms): TargetRefusal | undefined {
  for (const { id, amount, stepUg, ...assays } of lines) {
    const stated = statedFraction(amount)
    if (stated === 0 || fractionOf(sizeUg, planned(stated, assays), stepUg) > 0) continue
    return { code: 'TARGET_ROUNDS_TO_ZERO', id, targetUg: fractionOf(sizeUg, planned(stated, assays), 1), stepUg }
  }
  return undefined
}

function isSound(amount: Amount): boolean {
  switch (amount.kind) {
    case 'fraction':
      return isShare(amount.fraction)
    case 'as-needed': {
      const { min, expected, max } = amount
      return min >= 0 && min <= expected && expected <= max && max <= 1
    }
    case 'qs': {
      const rests = amount.portions.filter((portion) => 'rest' in portion).length
      const held = amount.heldBack ?? 0
      return (
        rests <= 1 && held >= 0 && held < 1 && amount.portions.every((part) => 'rest' in part || isShare(part.fraction))
      )
    }
  }
}

const isShare = (value: number): boolean => value > 0 && value <= 1

function statedFraction(amount: Amount): number {
  switch (amount.kind) {
    case 'fraction':
      return amount.fraction
    case 'as-needed':
      return amount.expected
    case 'qs':
      return 0
  }
}

type Assays = Pick<TargetLine, 'assayAssumed' | 'lotAssay'>

/** Only where both assays are known is there a difference to correct. */
function planned(fraction: number, { assayAssumed, lotAssay }: Assays): Ratio {
  const stated = ratioOf(fraction)
  if (assayAssumed === undefined || lotAssay === undefined) return stated
  return over(times(stated, ratioOf(assayAssumed)), ratioOf(lotAssay))
}

const plannedFraction = (line: TargetLine): number => {
  const { n, d } = planned(statedFraction(line.amount), line)
  return Number(n) / Number(d)
}

const sumOfPlanned = (lines: readonly TargetLine[]): number =>
  lines.reduce((sum, line) => sum + plannedFraction(line), 0)

const targetOf = (line: TargetLine, sizeUg: Micrograms): LineTarget => ({
  targetUg: fractionOf(sizeUg, planned(statedFraction(line.amount), line), line.stepUg),
  shownStepUg: line.stepUg,
  fraction: plannedFraction(line),
})

const plainTarget = (line: TargetLine, sizeUg: Micrograms): Micrograms =>
  fractionOf(sizeUg, ratioOf(statedFraction(line.amount)), line.stepUg)

const sumOf = (lines: readonly TargetLine[], targets: ReadonlyMap<string, LineTarget>): Micrograms =>
  lines.reduce((sum, { id }) => sum + (targets.get(id)?.targetUg ?? 0), 0)
