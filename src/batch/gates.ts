import { massIn } from '../trade/ledger'
import type { Lot } from './catalogue'
import type { Gate } from './gate'
import { msOf } from './instant'
import type { PlannedStep } from './plan'
import { isWaitedFor, openDeviation, statusOf, vesselNow } from './progress'
import type { BatchState } from './state'
import { temperatureGates } from './temperature-gates'

/** Gates in the way of beginning a step (weighing, tipping in, starting), or of calling it finished. */
export function gatesOf(
  state: BatchState,
  stepId: string,
  nowMs: number,
  moment: 'begin' | 'finish' = 'begin',
  lot?: string,
): readonly Gate[] {
  const planned = state.plan.byId.get(stepId)
  const step = state.steps.get(stepId)
  if (!planned || !step) return []
  const all =
    moment === 'begin'
      ? [
          ...orderGate(state, planned),
          ...massGates(state, planned, nowMs, lot),
          ...temperatureGates(state, planned, nowMs, moment),
        ]
      : [
          ...orderGate(state, planned),
          ...limitsGate(state, planned),
          ...timerGates(state, planned, nowMs),
          ...temperatureGates(state, planned, nowMs, moment),
        ]
  return all.filter((gate) => !gate.passable || !step.gatesPassed.has(gate.key))
}

/** The last day of use is a whole day. */
export const isExpired = (lot: Lot, nowMs: number): boolean =>
  lot.expires !== undefined && nowMs >= msOf(lot.expires) + 86_400_000

/** The lot a weighing would use: the one named, else the line's first. Undefined where it is not of this line. */
export function lotInUse(state: BatchState, lineId: string, lot?: string): Lot | undefined {
  const chosen = lot ?? state.lotsOfLine.get(lineId)?.[0]
  return state.plan.lines.get(lineId)?.lots.find((each) => each.id === chosen)
}

function orderGate(state: BatchState, planned: PlannedStep): readonly Gate[] {
  if (!['waiting', 'over'].includes(statusOf(state, planned.id))) return []
  const steps = planned.waitsFor.filter((id) => isWaitedFor(state, id))
  return steps.length === 0 ? [] : [{ code: 'ORDER', key: 'ORDER', passable: true, steps }]
}

function massGates(state: BatchState, planned: PlannedStep, nowMs: number, lot: string | undefined): readonly Gate[] {
  const { step } = planned
  switch (step.kind) {
    case 'weigh':
      return [...tareGate(state, planned), ...lotGates(state, planned, nowMs, lot), ...deviationGate(state, planned)]
    case 'charge':
      return cupGates(state, step.cup, nowMs)
    case 'combine':
      return cupGates(state, step.from, nowMs)
    case 'adjust':
      return lotGates(state, planned, nowMs, lot)
    default:
      return []
  }
}

function tareGate(state: BatchState, { step }: PlannedStep): readonly Gate[] {
  const vessel = vesselNow(state, step.vessel)
  const isVessel = state.plan.vessels.get(vessel)?.kind === 'vessel'
  if (!isVessel || state.vessels.get(vessel)?.tareUg !== undefined) return []
  return [{ code: 'NO_TARE', key: `NO_TARE:${vessel}`, passable: true, vessel }]
}

function lotGates(state: BatchState, planned: PlannedStep, nowMs: number, lotId: string | undefined): readonly Gate[] {
  if (!planned.line || planned.line.lots.length === 0) return []
  const line = planned.line.line.id
  const lot = lotInUse(state, line, lotId)
  if (!lot) return [{ code: 'NO_LOT', key: 'NO_LOT', passable: true, line }]
  // Start called it out already, about the line, and somebody kept it with a reason.
  const kept = (code: string): boolean =>
    state.header.kept.some((each) => each.code === code && (each.about === line || each.about === lot.id))
  const gates: Gate[] = []
  if (isExpired(lot, nowMs) && !kept('LOT_EXPIRED')) {
    gates.push({ code: 'LOT_EXPIRED', key: `LOT_EXPIRED:${lot.id}`, passable: true, lot: lot.code })
  }
  if (lot.status === 'quarantine' && !kept('LOT_QUARANTINED')) {
    gates.push({ code: 'LOT_QUARANTINED', key: `LOT_QUARANTINED:${lot.id}`, passable: true, lot: lot.code })
  }
  return gates
}

/** An over-weighed line takes nothing more until a way on is chosen. */
function deviationGate(state: BatchState, planned: PlannedStep): readonly Gate[] {
  const deviation = openDeviation(state, planned.id)
  if (!deviation) return []
  return [{ code: 'DEVIATION_OPEN', key: 'DEVIATION_OPEN', passable: false, deviation: deviation.id }]
}

function cupGates(state: BatchState, cup: string, nowMs: number): readonly Gate[] {
  if (massIn(state.ledger, cup) === 0) return [{ code: 'CUP_EMPTY', key: 'CUP_EMPTY', passable: false, vessel: cup }]
  const filledAtMs = state.vessels.get(cup)?.firstFilledAtMs
  const mostMinutes = state.plan.vessels.get(cup)?.openLifeMinutes
  if (filledAtMs === undefined || mostMinutes === undefined) return []
  const ageMs = nowMs - filledAtMs
  if (ageMs <= mostMinutes * 60_000) return []
  return [{ code: 'CUP_TOO_OLD', key: 'CUP_TOO_OLD', passable: true, vessel: cup, ageMs, mostMinutes }]
}

function timerGates(state: BatchState, planned: PlannedStep, nowMs: number): readonly Gate[] {
  const minutes = minutesOf(planned)
  if (minutes === undefined) return []
  const timer = state.timers.get(state.steps.get(planned.id)?.timer ?? '')
  if (!timer) return [{ code: 'TIMER_NOT_STARTED', key: 'TIMER_NOT_STARTED', passable: true, minutes }]
  const leftMs = timer.deadlineAtMs - nowMs
  return leftMs > 0 ? [{ code: 'TIMER_RUNNING', key: 'TIMER_RUNNING', passable: true, leftMs }] : []
}

/** The time a step must have run, where it states one. */
export function minutesOf({ step }: PlannedStep): number | undefined {
  switch (step.kind) {
    case 'hold':
    case 'hydrate':
    case 'mix':
    case 'deaerate':
      return step.minutes
    case 'rest':
      return step.hours * 60
    case 'heat':
      return step.holdMinutes
    default:
      return undefined
  }
}

/** An adjustment is not finished while its last reading is outside the window. */
function limitsGate(state: BatchState, { id, step }: PlannedStep): readonly Gate[] {
  if (step.kind !== 'adjust') return []
  const check = state.header.revision.specification.find((each) => each.id === step.check)
  if (!check?.limits) return []
  const last = state.measurements.findLast((each) => each.body.step === id)
  const value = last?.body.value
  const { min, max } = check.limits
  if (value !== undefined && value >= (min ?? value) && value <= (max ?? value)) return []
  return [
    {
      code: 'OUTSIDE_LIMITS',
      key: last === undefined ? 'OUTSIDE_LIMITS' : `OUTSIDE_LIMITS:${last.id}`,
      passable: true,
      label: check.label,
      ...(value === undefined ? {} : { value }),
      ...(min === undefined ? {} : { low: min }),
      ...(max === undefined ? {} : { high: max }),
    },
  ]
}
