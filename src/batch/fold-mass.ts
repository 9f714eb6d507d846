import { contentsOf, type Movement, post } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { lotCorrected, useLot } from './fold-lot'
import type { BatchEvent } from './kinds'
import { noticeOver } from './notice-over'
import { assayRatio } from './plan-batch'
import { restartVessel, settleOpen } from './restart-vessel'
import { qsLineOf } from './room'
import type { BatchState, StepState } from './state'

type Of<K extends BatchEvent['kind']> = Extract<BatchEvent, { kind: K }>

export type MassEvent = Of<
  | 'weighed'
  | 'adjusted'
  | 'charged'
  | 'transferred'
  | 'discarded'
  | 'spilled'
  | 'lot-corrected'
  | 'unplanned-added'
  | 'evaporated'
  | 'made-up'
  | 'sampled'
  | 'filled'
>

/** Moves mass in the ledger. What does not add up is noted as a doubt and moves nothing. */
export function applyMass(state: BatchState, event: MassEvent, atMs: number): void {
  switch (event.kind) {
    case 'weighed':
      weighed(state, event, atMs)
      return
    case 'adjusted':
      adjusted(state, event, atMs)
      return
    case 'charged':
    case 'transferred':
      emptied(state, event, atMs)
      return
    case 'discarded':
      discarded(state, event, atMs)
      return
    case 'spilled':
      enter(state, event.id, remove(event.body.vessel, 'spilled', event.body.massUg))
      return
    case 'lot-corrected':
      lotCorrected(state, event, atMs)
      return
    case 'unplanned-added':
      unplanned(state, event, atMs)
      return
    case 'evaporated':
      enter(state, event.id, {
        kind: 'evaporate',
        from: event.body.vessel,
        component: event.body.line,
        massUg: event.body.massUg,
      })
      return
    case 'made-up':
      madeUp(state, event, atMs)
      return
    case 'sampled':
    case 'filled':
      takenAway(state, event, atMs)
  }
}

function weighed(state: BatchState, event: Of<'weighed'>, atMs: number): void {
  const { step: stepId, line, vessel, netUg, lot } = event.body
  const step = knownStep(state, event, stepId)
  if (!step || !add(state, event, vessel, line, netUg, atMs)) return
  const planned = state.plan.lines.get(line)
  step.netUg += netUg
  step.countedUg += planned ? Math.round(netUg * assayRatio(planned, lot)) : netUg
  step.weighings.push(event)
  useLot(state, lot, netUg)
  noticeOver(state, event, atMs)
}

function adjusted(state: BatchState, event: Of<'adjusted'>, atMs: number): void {
  const { step: stepId, line, vessel, netUg, lot } = event.body
  const step = knownStep(state, event, stepId)
  if (!step || !add(state, event, vessel, line, netUg, atMs)) return
  step.netUg += netUg
  step.countedUg += netUg
  step.portions.push(event)
  useLot(state, lot, netUg)
  // An addition of a rework as earlier versions wrote it.
  if (state.plan.byId.get(stepId)?.step.kind === 'weigh') step.finished = { atMs, how: 'done' }
}

function emptied(state: BatchState, event: Of<'charged' | 'transferred'>, atMs: number): void {
  const { step: stepId, from, to, residueUg, rinseUg, rinseLine } = event.body
  const step = knownStep(state, event, stepId)
  if (!step) return
  if (rinseUg > 0 && rinseLine !== undefined) {
    if (!add(state, event, from, rinseLine, rinseUg, atMs)) return
    takeHeldBack(state, rinseUg)
  }
  if (!enter(state, event.id, { kind: 'transfer', from, to, residueUg })) return
  const source = state.vessels.get(from)
  if (source) {
    source.emptiedInto = to
    source.emptiedAtMs = atMs
  }
  touch(state, to, atMs)
  step.finished = { atMs, how: 'done' }
}

function discarded(state: BatchState, event: Of<'discarded'>, atMs: number): void {
  const { vessel, massUg, line } = event.body
  const lostUg = qsIn(state, vessel)
  const done = enter(state, event.id, {
    kind: 'remove',
    from: vessel,
    sink: 'discarded',
    massUg,
    ...(line === undefined ? {} : { component: line }),
  })
  if (!done) return
  if (line === undefined) {
    const weighedUg = qsWeighedUg(state)
    restartVessel(state, vessel, event.by, event.body.reason, atMs)
    // Rinses and make-up that were lost with it may be used again; the portions are to be weighed anew.
    state.heldBackUg += Math.max(0, lostUg - (weighedUg - qsWeighedUg(state)))
  } else if (massUg !== 'all') takenOut(state, event, line, massUg, atMs)
}

const qsIn = (state: BatchState, vessel: string): Micrograms => heldOf(state, vessel, qsLineOf(state) ?? '')

function qsWeighedUg(state: BatchState): Micrograms {
  const line = qsLineOf(state)
  const steps = state.plan.steps.filter(({ step }) => step.kind === 'weigh' && step.line === line)
  return steps.reduce((sum, { id }) => sum + (state.steps.get(id)?.netUg ?? 0), 0)
}

/** Taken out of a cup again: the step has that much less, and a deviation that was only in the cup may be gone. */
function takenOut(state: BatchState, event: Of<'discarded'>, line: string, massUg: Micrograms, atMs: number): void {
  for (const step of state.steps.values()) {
    const last = step.weighings.at(-1)
    if (last?.body.vessel !== event.body.vessel || last.body.line !== line) continue
    const ratio = step.netUg === 0 ? 1 : step.countedUg / step.netUg
    step.netUg -= massUg
    step.countedUg = Math.max(0, step.countedUg - Math.round(massUg * ratio))
    if (step.countedUg > last.body.highUg) return
    settleOpen(state, step.id, { how: 'taken out', reason: event.body.reason, atMs, by: event.by })
    return
  }
}

function unplanned(state: BatchState, event: Of<'unplanned-added'>, atMs: number): void {
  const { component, vessel, netUg, lot } = event.body
  if (!add(state, event, vessel, component, netUg, atMs)) return
  state.unplanned.set(component, event)
  useLot(state, lot, netUg)
  const step = state.steps.get(event.body.step ?? '')
  if (step) step.finished = { atMs, how: 'done' }
}

function madeUp(state: BatchState, event: Of<'made-up'>, atMs: number): void {
  const { step: stepId, vessel, line, netUg, lot } = event.body
  const step = knownStep(state, event, stepId)
  if (!step) return
  if (netUg > 0) {
    if (!add(state, event, vessel, line, netUg, atMs)) return
    takeHeldBack(state, netUg)
    useLot(state, lot, netUg)
  }
  step.netUg += netUg
  step.finished = { atMs, how: 'done' }
}

function takenAway(state: BatchState, event: Of<'sampled' | 'filled'>, atMs: number): void {
  const { vessel, massUg, step: stepId } = event.body
  if (!enter(state, event.id, remove(vessel, event.kind, massUg))) return
  const step = stepId === undefined ? undefined : state.steps.get(stepId)
  if (!step) return
  step.netUg += massUg
  step.finished = { atMs, how: 'done' }
}

function add(
  state: BatchState,
  event: BatchEvent,
  vessel: string,
  component: string,
  massUg: Micrograms,
  atMs: number,
): boolean {
  if (!enter(state, event.id, { kind: 'add', to: vessel, component, massUg })) return false
  touch(state, vessel, atMs)
  return true
}

function touch(state: BatchState, vesselId: string, atMs: number): void {
  const vessel = state.vessels.get(vesselId)
  if (vessel) vessel.firstFilledAtMs ??= atMs
}

/** Moves it in the ledger; what does not add up is a doubt. */
export function enter(state: BatchState, entry: string, movement: Movement): boolean {
  const posted = post(state.ledger, movement)
  if (!posted.ok) state.doubts.push({ code: 'DOES_NOT_ADD_UP', entry, why: posted.refusal.code })
  return posted.ok
}

const remove = (from: string, sink: 'spilled' | 'sampled' | 'filled', massUg: Micrograms): Movement => ({
  kind: 'remove',
  from,
  sink,
  massUg,
})

function knownStep(state: BatchState, event: BatchEvent, id: string): StepState | undefined {
  const step = state.steps.get(id)
  if (!step) state.doubts.push({ code: 'UNKNOWN_STEP', entry: event.id })
  return step
}

function takeHeldBack(state: BatchState, massUg: Micrograms): void {
  state.heldBackUg = Math.max(0, state.heldBackUg - massUg)
}

/** Mass of one component in one vessel. */
const heldOf = (state: BatchState, vessel: string, component: string): Micrograms =>
  contentsOf(state.ledger, vessel).get(component) ?? 0
