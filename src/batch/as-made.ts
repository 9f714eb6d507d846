import { compositionAsMade } from '../trade/composition'
import { judge } from '../trade/tolerance'
import type { Line } from './formula'
import { addedBeside, tidy } from './made-beside'
import type { MadeOtherwise, StepField } from './made-otherwise'
import { unmixed } from './premix'
import { bandOfStep } from './progress'
import { type StepRow, stepRows } from './record-steps'
import type { BatchState } from './state'
import { titleOf } from './wording'

/**
 * What the batch did otherwise than the revision as it is written, in the order of the formula; empty where it was made
 * to the letter. A batch weighed with pre-mixes holds another revision, and is counted by what they were made of.
 */
export function madeOtherwise(state: BatchState, revision = state.header.revision): readonly MadeOtherwise[] {
  const shares = unmixed(sharesAsMade(state), state.header.premixes ?? [])
  const rows = stepRows(state, (id) => id)
  return [
    ...revision.phases.flatMap(({ lines }) => lines.flatMap((line) => ofLine(state, line, shares))),
    ...addedBeside(state, revision),
    ...revision.procedure.flatMap(({ id }) => {
      const row = rows.find(({ planned }) => planned.id === id)
      return row === undefined ? [] : ofStep(state, row)
    }),
  ]
}

/** Below this a difference is the balance's: 0.0005 % of the batch. */
const leastShare = 5e-6

/** What each line came to, in the assay that the formula is written for. */
function sharesAsMade(state: BatchState): ReadonlyMap<string, number> {
  const shares = new Map(compositionAsMade(state.ledger))
  for (const [line, share] of shares) {
    const steps = [...state.steps.values()].filter(({ id }) => state.plan.byId.get(id)?.line?.line.id === line)
    const netUg = steps.reduce((sum, step) => sum + step.netUg, 0)
    const countedUg = steps.reduce((sum, step) => sum + step.countedUg, 0)
    shares.set(line, tidy(netUg > 0 ? (share * countedUg) / netUg : share))
  }
  return shares
}

function ofLine(
  state: BatchState,
  { id: line, materialId, amount }: Line,
  shares: ReadonlyMap<string, number>,
): MadeOtherwise[] {
  const planned = amount.kind === 'fraction' ? amount.fraction : amount.kind === 'as-needed' ? amount.expected : null
  if (planned === null) return []
  const title = state.header.materials.find(({ id }) => id === materialId)?.name ?? line
  const made = shares.get(line) ?? 0
  if (made === 0 && amount.kind === 'fraction')
    return [{ id: line, kind: 'line-out', line, title, planned, beyond: true }]
  if (Math.abs(made - planned) < leastShare) return []
  const beyond = amount.kind === 'as-needed' ? made < amount.min || made > amount.max : isBeyondBand(state, line)
  return [{ id: line, kind: 'share', line, title, planned, made, beyond }]
}

/** Against the band of the plan as it was at the start: what a remedy made of the target is a difference too. */
function isBeyondBand(state: BatchState, line: string): boolean {
  return state.plan.steps.some((planned) => {
    const step = state.steps.get(planned.id)
    if (planned.line?.line.id !== line || planned.step.kind !== 'weigh' || step === undefined) return false
    // A rework adds what the formula did not ask for.
    if (planned.part !== undefined) return step.netUg > 0
    const wasScaled = (step.targets.at(-1) ?? 0) !== (step.targets[0] ?? 0)
    return wasScaled || judge(step.countedUg, bandOfStep(state, planned), planned.line.balance.stepUg) !== 'within'
  })
}

function ofStep(state: BatchState, row: StepRow): MadeOtherwise[] {
  const { planned, finished, toolRpm, moved } = row
  const { step, id } = planned
  if (finished === undefined) return []
  const names = { revision: state.header.revision, materials: state.header.materials, vessels: state.header.vessels }
  const title = titleOf(step, names)
  if (finished.how === 'skipped') return 'line' in step ? [] : [{ id, kind: 'step-out', step: id, title, beyond: true }]
  const other = (
    field: StepField,
    was: number | undefined,
    made: number,
    least: number,
    beyond: boolean,
  ): MadeOtherwise[] =>
    was !== undefined && Math.abs(made - was) < least
      ? []
      : [
          {
            id: `${id} ${field}`,
            kind: 'step',
            step: id,
            title,
            field,
            made,
            beyond,
            ...(was === undefined ? {} : { planned: was }),
          },
        ]
  const minutes = minutesTaken(row)
  const readings = readingsOf(state, row)
  // A minute is what the clock's rounding makes; a tenth is what nobody minds.
  const isOff = (made: number, was: number) => Math.abs(made - was) > Math.max(1, was / 10)
  switch (step.kind) {
    case 'hold':
    case 'hydrate':
    case 'deaerate':
      return minutes === null ? [] : other('minutes', step.minutes, minutes, 1, isOff(minutes, step.minutes))
    case 'mix': {
      const { min = 0, max = Number.POSITIVE_INFINITY } = step.rpm ?? {}
      return [
        ...(minutes === null ? [] : other('minutes', step.minutes, minutes, 1, isOff(minutes, step.minutes))),
        ...(toolRpm === undefined || (toolRpm >= min && toolRpm <= max)
          ? []
          : other('rpm', undefined, toolRpm, 0, true)),
      ]
    }
    case 'rest': {
      const hours = minutes === null ? null : Math.round(minutes / 6) / 10
      return hours === null ? [] : other('hours', step.hours, hours, 0.5, hours < step.hours)
    }
    case 'heat': {
      const most = Math.max(...readings.map(({ temperatureC }) => temperatureC))
      const held = step.holdMinutes === undefined || minutes === null ? null : minutes
      return [
        ...(readings.length === 0 ? [] : other('targetC', step.targetC, most, 1, most < step.targetC)),
        ...(held === null ? [] : other('holdMinutes', step.holdMinutes, held, 1, isOff(held, step.holdMinutes ?? 0))),
      ]
    }
    case 'cool': {
      const last = readings.at(-1)?.temperatureC
      return last === undefined ? [] : other('targetC', step.targetC, last, 1, last > step.targetC)
    }
    case 'combine': {
      if (moved?.fromC === undefined || moved.toC === undefined) return []
      const apart = Math.abs(moved.fromC - moved.toC)
      const least = Math.min(moved.fromC, moved.toC)
      const { maxDifferenceC = Number.POSITIVE_INFINITY, bothAtLeastC = Number.NEGATIVE_INFINITY } = step
      return [
        ...(apart > maxDifferenceC ? other('maxDifferenceC', step.maxDifferenceC, apart, 0, true) : []),
        ...(least < bothAtLeastC ? other('bothAtLeastC', step.bothAtLeastC, least, 0, true) : []),
      ]
    }
    default:
      return []
  }
}

/** What was read of a step, °C, oldest first. */
export const temperaturesOf = (state: BatchState, row: StepRow): readonly number[] =>
  readingsOf(state, row).map(({ temperatureC }) => temperatureC)

/** Of the step; where none names it, the last one of its vessel before it was finished. */
function readingsOf(state: BatchState, { readings, planned, finished }: StepRow): StepRow['readings'] {
  if (readings.length > 0) return readings
  const untilMs = finished?.atMs ?? Number.POSITIVE_INFINITY
  return (state.vessels.get(planned.step.vessel)?.readings ?? []).filter(({ atMs }) => atMs <= untilMs).slice(-1)
}

/** How long a step really took: from its timer, or from its start, to its end. Whole minutes. */
export function minutesTaken({ timer, startedAtMs, finished }: StepRow): number | null {
  if (timer?.actualMs !== undefined) return Math.round(timer.actualMs / 60_000)
  if (startedAtMs === undefined || finished === undefined) return null
  return Math.round((finished.atMs - startedAtMs) / 60_000)
}
