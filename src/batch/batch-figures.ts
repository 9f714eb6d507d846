import { compositionAsMade } from '../trade/composition'
import { relativeTolerance } from '../trade/relative-tolerance'
import { minutesTaken, temperaturesOf } from './as-made'
import type { Check } from './formula'
import type { PlannedLine } from './plan'
import { lossCheckOf } from './reconciliation'
import { resultRecord } from './record-results'
import { type StepRow, stepRows } from './record-steps'
import type { BatchState } from './state'
import { titleOf } from './wording'

/** One figure of a batch that others of its formula have as well. Shares in % of the batch, temperatures °C. */
export interface BatchFigure {
  readonly id: string
  readonly kind: 'share' | 'process' | 'check'
  readonly label: string
  readonly unit: string
  readonly value: number
  /** What was asked for, where something was. */
  readonly target?: number
  readonly limits?: Check['limits']
  /** What counts as one unit of difference: a tolerance, half a window, a degree. */
  readonly one: number
}

/** Everything in which batches of a formula can differ, as one batch had it. */
export const figuresOf = (state: BatchState): readonly BatchFigure[] => [
  ...sharesOf(state),
  ...stepRows(state, (id) => id).flatMap((row) => stepFigures(state, row)),
  ...lossFigures(state),
  ...checkFigures(state),
]

function sharesOf(state: BatchState): BatchFigure[] {
  const made = compositionAsMade(state.ledger)
  return [...state.plan.lines.values()].flatMap((planned) => {
    const share = made.get(planned.line.id) ?? 0
    if (share === 0 && planned.fraction === 0) return []
    const value = percent(share)
    return [
      {
        id: `share ${planned.line.id}`,
        kind: 'share' as const,
        label: planned.material.name,
        unit: '%',
        value,
        target: percent(planned.fraction),
        one: toleranceOf(state, planned),
      },
    ]
  })
}

/** The line's tolerance in % of the batch, never finer than its balance reads; of an adjuster half of what it may take. */
function toleranceOf(state: BatchState, { line, fraction, targetUg, balance }: PlannedLine): number {
  const readable = balance.stepUg / state.totalUg
  const { amount } = line
  const half =
    amount.kind === 'as-needed'
      ? (amount.max - amount.min) / 2
      : relativeTolerance(Math.max(1, targetUg), line.tolerance) * fraction
  return Math.max(half, readable) * 100
}

function stepFigures(state: BatchState, row: StepRow): BatchFigure[] {
  const { planned, finished, toolRpm } = row
  const { step } = planned
  if (finished === undefined || finished.how === 'skipped') return []
  const figure = (what: string, value: number | null | undefined, unit: string, one: number, target?: number) =>
    value === null || value === undefined
      ? []
      : [
          {
            id: `step ${planned.id} ${what}`,
            kind: 'process' as const,
            label: `${titleOf(step, state.header)}: ${what}`,
            unit,
            value,
            one,
            ...(target === undefined ? {} : { target }),
          },
        ]
  const minutes = minutesTaken(row)
  const read = temperaturesOf(state, row)
  switch (step.kind) {
    case 'hold':
    case 'hydrate':
    case 'deaerate':
      return figure('time', minutes, 'min', Math.max(1, step.minutes / 10), step.minutes)
    case 'mix': {
      const { min, max } = step.rpm ?? {}
      const middle = min === undefined || max === undefined ? undefined : (min + max) / 2
      const one = min === undefined || max === undefined || min === max ? (toolRpm ?? 1) / 10 : (max - min) / 2
      return [
        ...figure('time', minutes, 'min', Math.max(1, step.minutes / 10), step.minutes),
        ...figure('speed', toolRpm, 'rpm', one, middle),
      ]
    }
    case 'heat':
      return figure('highest', read.length === 0 ? null : Math.max(...read), '°C', 1, step.targetC)
    case 'cool':
      return figure('last', read.at(-1), '°C', 1, step.targetC)
    case 'combine': {
      const { fromC, toC } = row.moved ?? {}
      return fromC === undefined || toC === undefined ? [] : figure('cooler of the two', Math.min(fromC, toC), '°C', 1)
    }
    default:
      return []
  }
}

function lossFigures(state: BatchState): BatchFigure[] {
  const { sums } = lossCheckOf(state)
  if (sums.filledUg === 0) return []
  const share = (massUg: number) => percent(massUg / state.totalUg)
  return [
    { id: 'evaporated', kind: 'process', label: 'Evaporated', unit: '%', value: share(sums.evaporatedUg), one: 1 },
    { id: 'filled', kind: 'process', label: 'Filled', unit: '%', value: share(sums.filledUg), one: 1 },
  ]
}

/** Of every check with a figure the last one: of the batch itself, never of a kept jar. */
function checkFigures(state: BatchState): BatchFigure[] {
  const { rested, inProcess, part } = resultRecord(state, (id) => id)
  const counted = [...inProcess, ...rested.filter((row) => row.part === part)].filter(({ struck }) => !struck)
  return state.header.revision.specification.flatMap((check) => {
    const last = counted.findLast((row) => row.check?.id === check.id && row.body.value !== undefined)
    const value = last?.body.value
    if (value === undefined) return []
    const { min, max } = check.limits ?? {}
    const half = min === undefined || max === undefined ? 0 : (max - min) / 2
    return [
      {
        id: `check ${check.id}`,
        kind: 'check' as const,
        label: check.label,
        unit: last?.body.unit ?? '',
        value,
        one: half > 0 ? half : Math.max(Math.abs(value) / 20, Number.EPSILON),
        ...(check.limits === undefined ? {} : { limits: check.limits }),
      },
    ]
  })
}

/** To 0.0001 % of the batch: finer than any balance of a bench tells. */
const percent = (share: number): number => Number((share * 100).toFixed(4))
