import type { MassEvent } from './fold-mass'
import { reworked } from './fold-rework'
import { msOf } from './instant'
import type { BatchEvent } from './kinds'
import { noticeOverAfterRemedy } from './notice-over'
import { withLots } from './plan-batch'
import { impliedBy, isOver } from './progress'
import type { BatchState, Entry, StepState } from './state'

type Of<K extends BatchEvent['kind']> = Extract<BatchEvent, { kind: K }>

type Silent = Of<
  | 'opened'
  | 'struck'
  | 'noted'
  | 'pictured'
  | 'signed'
  | 'device-signed'
  | 'clock-jumped'
  | 'healed'
  | 'bath-changed'
  | 'surroundings-told'
  | 'stability-planned'
  | 'cycle-counted'
>
type ProcessEvent = Exclude<BatchEvent, MassEvent | Silent>

/** Everything about a batch that moves no mass: steps, readings, timers, decisions. */
export function applyProcess(state: BatchState, event: ProcessEvent, atMs: number): void {
  switch (event.kind) {
    case 'preflight-checked':
      state.preflight.push(...event.body.items)
      return
    case 'instrument-checked':
      state.instruments.push({ atMs, check: event.body.instrument, good: event.body.good })
      return
    case 'tared':
      tared(state, event)
      return
    case 'lot-chosen':
      state.lotsOfLine.set(event.body.line, event.body.lots)
      state.plan = withLots(state.plan, event.body.line, event.body.opened ?? [])
      return
    case 'step-started':
    case 'step-finished':
    case 'step-skipped':
    case 'gate-passed':
      stepped(state, event, atMs)
      return
    case 'temperature-read':
      state.vessels
        .get(event.body.vessel)
        ?.readings.push({ atMs, temperatureC: event.body.temperatureC, entry: event.id })
      // One that was entered late stands where it was read.
      state.vessels.get(event.body.vessel)?.readings.sort((a, b) => a.atMs - b.atMs)
      return
    case 'timer-started':
    case 'timer-acknowledged':
      timed(state, event, atMs)
      return
    case 'measured':
      measured(state, event, atMs)
      return
    case 'deviation-noticed':
      deviated(state, event, atMs)
      return
    case 'remedy-chosen':
      remedied(state, event, atMs)
      return
    case 'person-changed':
      state.person = event.body.person
      return
    case 'parked':
      state.stage = 'parked'
      return
    case 'resumed':
      state.stage = 'in-hand'
      return
    case 'abandoned':
      state.stage = 'abandoned'
      return
    case 'reworked':
      reworked(state, event, atMs)
      return
    case 'closed':
      state.stage = 'closed'
      state.decision = {
        decision: event.body.decision,
        atMs,
        by: event.by,
        ...(event.body.note === undefined ? {} : { note: event.body.note }),
      }
  }
}

function tared(state: BatchState, event: Of<'tared'>): void {
  const vessel = state.vessels.get(event.body.vessel)
  if (vessel) vessel.tareUg = event.body.tareUg
}

function stepped(
  state: BatchState,
  event: Of<'step-started' | 'step-finished' | 'step-skipped' | 'gate-passed'>,
  atMs: number,
): void {
  const step = state.steps.get(event.body.step)
  if (!step) {
    state.doubts.push({ code: 'UNKNOWN_STEP', entry: event.id })
    return
  }
  switch (event.kind) {
    case 'step-started':
      step.startedAtMs = atMs
      return
    case 'step-finished':
      step.finished = { atMs, how: 'done', ...(event.body.saw === undefined ? {} : { note: event.body.saw }) }
      return
    case 'step-skipped':
      step.finished = { atMs, how: 'skipped', note: event.body.reason }
      return
    case 'gate-passed':
      step.gatesPassed.set(event.body.gate, event.body.reason)
  }
}

function timed(state: BatchState, event: Of<'timer-started' | 'timer-acknowledged'>, atMs: number): void {
  if (event.kind === 'timer-acknowledged') {
    const timer = state.timers.get(event.body.timer)
    if (timer) timer.acknowledged = { atMs, lateMs: event.body.lateMs }
    return
  }
  const { timer, label, startedAtMs, deadlineAtMs, step: stepId } = event.body
  state.timers.set(timer, {
    id: timer,
    label,
    startedAtMs,
    deadlineAtMs,
    ...(stepId === undefined ? {} : { step: stepId }),
  })
  const step = stepId === undefined ? undefined : state.steps.get(stepId)
  if (!step) return
  step.timer = timer
  step.startedAtMs ??= atMs
}

function measured(state: BatchState, event: Of<'measured'>, atMs: number): void {
  state.measurements.push(event)
  const planned = event.body.step === undefined ? undefined : state.plan.byId.get(event.body.step)
  const step = planned === undefined ? undefined : state.steps.get(planned.id)
  if (step && planned?.step.kind === 'measure') step.finished = { atMs, how: 'done' }
}

function deviated(state: BatchState, event: Of<'deviation-noticed'>, atMs: number): void {
  const { deviation, entry, step, line, direction, byUg, inCup, cause, lost } = event.body
  state.deviations.delete(impliedBy(entry))
  const struck = struckSince(state, event)
  state.deviations.set(deviation, {
    id: deviation,
    entry,
    step,
    line,
    direction,
    byUg,
    inCup,
    ...(cause === undefined ? {} : { cause }),
    ...(lost === undefined ? {} : { lost }),
    atMs,
    ...(struck
      ? { settled: { how: 'struck out' as const, reason: struck.reason, atMs: struck.atMs, by: struck.by } }
      : {}),
  })
}

/** The strike after which nothing needs a way on any more: of the weighing itself, or of what went in before it. */
function struckSince(state: BatchState, event: Of<'deviation-noticed'>): Entry['struck'] {
  const { entry, step, direction, cause } = event.body
  const own = state.entries.find((each) => each.event.id === entry)?.struck
  const planned = state.plan.byId.get(step)
  // What was foreign or lost is moot where a strike left nothing to lose.
  const isMoot = cause !== undefined && state.doubts.some((doubt) => 'entry' in doubt && doubt.entry === entry)
  const isPast = cause === undefined && direction === 'over' && planned && !isOver(state, planned)
  if (own || !(isMoot || isPast)) return own
  return state.entries.findLast((each) => each.struck)?.struck
}

/** A line that was left short by a word that was struck out since can be weighed on. */
export function withdrawn(state: BatchState, event: Of<'remedy-chosen'>, struck: NonNullable<Entry['struck']>): void {
  const deviation = state.deviations.get(event.body.deviation)
  if (deviation?.direction !== 'under' || deviation.cause !== undefined) return
  deviation.settled ??= { how: 'struck out', reason: struck.reason, atMs: struck.atMs, by: struck.by }
}

function remedied(state: BatchState, event: Of<'remedy-chosen'>, atMs: number): void {
  const { deviation: id, totalUg, heldBackUg, targets, also = [] } = event.body
  for (const each of [id, ...also]) settleOne(state, event, each, atMs)
  if (!state.deviations.has(id)) return
  if (totalUg !== state.totalUg) {
    state.totalWas.push(state.totalUg)
    state.totalUg = totalUg
  }
  state.heldBackUg = heldBackUg
  for (const target of targets) {
    retarget(state.steps.get(target.step), target.toUg)
    noticeOverAfterRemedy(state, target.step, atMs)
  }
}

function settleOne(state: BatchState, event: Of<'remedy-chosen'>, id: string, atMs: number): void {
  const { remedy: how, reason } = event.body
  const deviation = state.deviations.get(id)
  if (!deviation) {
    state.doubts.push({ code: 'DOES_NOT_ADD_UP', entry: event.id, why: 'NO_SUCH_DEVIATION' })
    return
  }
  const isMoot = deviation.settled?.how === 'struck out'
  if (isMoot) {
    state.doubts.push({ code: 'DOES_NOT_ADD_UP', entry: event.id, why: 'REMEDY_FOR_STRUCK_ENTRY' })
  }
  deviation.settled = { how, reason, atMs: msOf(event.at), by: event.by }
  const step = state.steps.get(deviation.step)
  const isShort = deviation.direction === 'under' && deviation.cause !== 'loss'
  if (step && isShort && !isMoot) step.finished = { atMs, how: 'accepted', note: reason }
}

/** A line that had been left short counts as unfinished again where it is to have more. */
function retarget(step: StepState | undefined, toUg: number): void {
  if (!step) return
  step.targets.push(toUg)
  if (step.finished?.how === 'accepted' && step.countedUg < toUg) delete step.finished
}
