import type { Micrograms } from '../trade/mass'
import type { BatchEvent } from './kinds'
import type { PlannedStep } from './plan'
import { entriesOf, type Stamp } from './record-entries'
import { isThermal, readingsOf, type TemperatureReading } from './record-readings'
import type { BatchState, TimerState } from './state'
import { changesOf } from './thermal-course'

/** A step of the process (weighings stand in the materials table). Moments ms UTC. */
export interface StepRow {
  readonly planned: PlannedStep
  readonly startedAtMs?: number
  readonly finished?: { readonly atMs: number; readonly how: 'done' | 'skipped' | 'accepted'; readonly note?: string }
  readonly by?: string
  readonly checkedBy?: string
  readonly toolRpm?: number
  readonly toolMm?: number
  readonly timer?: StepTimer
  /** Of a step that heats, cools or holds, oldest first. */
  readonly readings: readonly TemperatureReading[]
  /** What was changed about it meanwhile: its bath, its cover, its plate's setting. */
  readonly marks: readonly { readonly atMs: number; readonly what: string }[]
  /** Of charge and combine steps. */
  readonly moved?: {
    readonly residueUg: Micrograms
    readonly rinseUg: Micrograms
    readonly fromC?: number
    readonly toC?: number
  }
  readonly gates: readonly (Stamp & { readonly gate: string; readonly detail: string; readonly reason: string })[]
}

export interface StepTimer {
  readonly plannedMs: number
  /** Until somebody stopped the bell; absent while it runs. */
  readonly actualMs?: number
  readonly lateMs?: number
}

type Initials = (id: string) => string

/** In the order of the plan. Steps that have not begun are there too, without moments. Weigh steps only where a gate was passed. */
export function stepRows(state: BatchState, initialsOf: Initials): readonly StepRow[] {
  const gates = entriesOf(state, 'gate-passed', initialsOf).filter(({ struck }) => !struck)
  return state.plan.steps.flatMap((planned) => {
    const own = gates
      .filter(({ event }) => event.body.step === planned.id)
      .map(({ event, struck: _none, ...stamp }) => ({
        ...stamp,
        gate: event.body.gate,
        detail: event.body.detail,
        reason: event.body.reason,
      }))
    const isShown = planned.step.kind !== 'weigh' || own.length > 0 || isSkipped(state, planned)
    return isShown ? [rowOf(state, planned, own, initialsOf)] : []
  })
}

const isSkipped = (state: BatchState, { id }: PlannedStep): boolean => state.steps.get(id)?.finished?.how === 'skipped'

function rowOf(state: BatchState, planned: PlannedStep, gates: StepRow['gates'], initialsOf: Initials): StepRow {
  const step = state.steps.get(planned.id)
  const moved = movedIn(state, planned.id)
  const closing = closingEntry(state, planned.id, initialsOf)
  const timer = step?.timer === undefined ? undefined : state.timers.get(step.timer)
  return {
    planned,
    gates,
    ...heatOf(state, planned),
    ...(step?.startedAtMs === undefined ? {} : { startedAtMs: step.startedAtMs }),
    ...(step?.finished === undefined ? {} : { finished: step.finished }),
    ...(closing === undefined ? {} : closing),
    ...(timer === undefined ? {} : { timer: timerOf(timer) }),
    ...(moved === undefined ? {} : { moved }),
  }
}

function timerOf({ startedAtMs, deadlineAtMs, acknowledged }: TimerState): StepTimer {
  return {
    plannedMs: deadlineAtMs - startedAtMs,
    ...(acknowledged ? { actualMs: acknowledged.atMs - startedAtMs, lateMs: acknowledged.lateMs } : {}),
  }
}

/** Readings of a step that heats, cools or holds, and what was changed about its vessel from its start, or the first of them, to its end. */
function heatOf(state: BatchState, planned: PlannedStep): Pick<StepRow, 'readings' | 'marks'> {
  const readings = readingsOf(state, planned)
  if (!isThermal(planned)) return { readings, marks: [] }
  const step = state.steps.get(planned.id)
  const fromMs = Math.min(...[step?.startedAtMs, readings[0]?.atMs].flatMap((atMs) => atMs ?? []))
  const toMs = step?.finished?.atMs ?? Number.POSITIVE_INFINITY
  const marks = changesOf(state, planned.step.vessel).filter(({ atMs }) => atMs >= fromMs && atMs <= toMs)
  return { readings, marks }
}

type Moving = Extract<BatchEvent, { kind: 'charged' | 'transferred' }>

function movedIn(state: BatchState, id: string): StepRow['moved'] {
  const isMoving = (event: { kind: string }): event is Moving => ['charged', 'transferred'].includes(event.kind)
  const last = state.entries.findLast(
    ({ event, struck }) => !struck && isMoving(event) && event.body.step === id,
  )?.event
  if (!last || !isMoving(last)) return undefined
  const { residueUg, rinseUg } = last.body
  if (last.kind === 'charged') return { residueUg, rinseUg }
  const { fromC, toC } = last.body
  return {
    residueUg,
    rinseUg,
    ...(fromC === undefined ? {} : { fromC }),
    ...(toC === undefined ? {} : { toC }),
  }
}

/** Who brought the step to its end, and what they said with it. */
function closingEntry(
  state: BatchState,
  id: string,
  initialsOf: Initials,
): Pick<StepRow, 'by' | 'checkedBy' | 'toolRpm' | 'toolMm'> | undefined {
  const finished = entriesOf(state, 'step-finished', initialsOf).findLast(
    ({ event, struck }) => !struck && event.body.step === id,
  )
  if (finished) {
    const { checkedBy, toolRpm, toolMm } = finished.event.body
    return {
      by: finished.by,
      ...(checkedBy === undefined ? {} : { checkedBy: initialsOf(checkedBy) }),
      ...(toolRpm === undefined ? {} : { toolRpm }),
      ...(toolMm === undefined ? {} : { toolMm }),
    }
  }
  const last = state.entries.findLast(({ event, struck }) => !struck && stepOf(event.body) === id)
  return last ? { by: initialsOf(last.event.by) } : undefined
}

const stepOf = (body: unknown): unknown =>
  typeof body === 'object' && body !== null && 'step' in body ? body.step : undefined
