import { accept, refuse } from '../trade/result'
import { decideMeasure } from './decide-measure'
import { gatesOf, lotInUse } from './gates'
import type { Context, Intention } from './intention'
import type { BatchDraft } from './kinds'
import { isDone } from './progress'
import type { Decision } from './refusal'
import { badMass } from './sanity'
import { notChecked, sign, signedAt, signHead } from './signing'
import { unfitSpeed } from './speed'
import type { BatchState } from './state'

type ProcessIntention = Extract<
  Intention,
  {
    do:
      | 'check-instrument'
      | 'tare'
      | 'choose-lots'
      | 'start-step'
      | 'finish-step'
      | 'skip-step'
      | 'pass-gate'
      | 'start-timer'
      | 'acknowledge-timer'
      | 'measure'
      | 'measure-all'
      | 'note'
      | 'hand-over'
      | 'park'
      | 'resume'
      | 'notice-clock'
      | 'abandon'
      | 'sign'
      | 'sign-head'
      | 'picture'
  }
>

type Asks<D extends ProcessIntention['do']> = Extract<ProcessIntention, { do: D }>

/** Rules of everything that moves no mass. */
export function decideProcess(state: BatchState, intention: ProcessIntention, context: Context): Decision {
  switch (intention.do) {
    case 'check-instrument':
      return one({ kind: 'instrument-checked', body: { instrument: intention.check, good: intention.good } })
    case 'tare':
      return tare(state, intention)
    case 'choose-lots':
      return chooseLots(state, intention)
    case 'start-step':
      return start(state, intention, context)
    case 'finish-step':
      return finish(state, intention, context)
    case 'skip-step':
      return skip(state, intention)
    case 'pass-gate':
      return passGate(state, intention, context)
    case 'start-timer':
      return startTimer(state, intention, context)
    case 'acknowledge-timer':
      return acknowledge(state, intention, context)
    case 'measure':
      return decideMeasure(state, { ...intention, results: [intention.result] }, context)
    case 'measure-all':
      return decideMeasure(state, intention, context)
    case 'note':
      return note(state, intention)
    case 'hand-over':
      return handOver(state, intention)
    case 'park':
      return withReason(intention.reason, { kind: 'parked', body: { reason: intention.reason } })
    case 'resume':
      return state.stage === 'parked' ? one({ kind: 'resumed', body: {} }) : accept([])
    case 'notice-clock':
      return one({ kind: 'clock-jumped', body: { byMs: intention.byMs } })
    case 'abandon':
      return withReason(intention.reason, { kind: 'abandoned', body: { reason: intention.reason } })
    case 'picture':
      return one({ kind: 'pictured', body: intention.picture })
    case 'sign':
      return sign(state, intention.signatures)
    case 'sign-head':
      return signHead(state, intention.signed)
  }
}

const one = (draft: BatchDraft): Decision => accept([draft])

const withReason = (reason: string, draft: BatchDraft): Decision =>
  reason.trim() === '' ? refuse({ code: 'REASON_MISSING' }) : one(draft)

const missingStep = (state: BatchState, step: string): Decision | null =>
  state.plan.byId.has(step) ? null : refuse({ code: 'NO_SUCH_STEP', step })

function tare(state: BatchState, { vessel, tareUg, standsIn }: Asks<'tare'>): Decision {
  if (!state.plan.vessels.has(vessel)) return refuse({ code: 'UNKNOWN_VESSEL_HERE', vessel })
  if (badMass(tareUg)) return refuse({ code: 'TARE_BAD' })
  return one({ kind: 'tared', body: { vessel, tareUg, ...(standsIn === undefined ? {} : { standsIn }) } })
}

function chooseLots(state: BatchState, { line, lots, opened = [], reason }: Asks<'choose-lots'>): Decision {
  const material = state.plan.lines.get(line)?.material
  const fresh = opened.filter((lot) => lots.includes(lot.id) && !lotInUse(state, line, lot.id))
  const fits = (id: string): boolean =>
    lotInUse(state, line, id) !== undefined || fresh.some((lot) => lot.id === id && lot.materialId === material?.id)
  const foreign = lots.find((id) => !fits(id))
  if (foreign !== undefined) return refuse({ code: 'OTHER_MATERIAL', lot: foreign, line: material?.name ?? line })
  const more = { ...(fresh.length === 0 ? {} : { opened: fresh }), ...(reason === undefined ? {} : { reason }) }
  return one({ kind: 'lot-chosen', body: { line, lots, ...more } })
}

/** A step that was started waits for nothing any more, so it is started only when nothing stands in its way. */
function start(state: BatchState, { step }: Asks<'start-step'>, context: Context): Decision {
  const missing = missingStep(state, step)
  if (missing) return missing
  if (isDone(state, step)) return refuse({ code: 'STEP_DONE', step })
  const gates = gatesOf(state, step, context.nowMs)
  if (gates.length > 0) return refuse({ code: 'GATE', gates })
  return one({ kind: 'step-started', body: { step } })
}

function finish(state: BatchState, intention: Asks<'finish-step'>, context: Context): Decision {
  const planned = state.plan.byId.get(intention.step)
  if (!planned) return refuse({ code: 'NO_SUCH_STEP', step: intention.step })
  if (ownEntry.has(planned.step.kind)) return refuse({ code: 'NOT_FOR_THIS_STEP', step: planned.id })
  if (isDone(state, planned.id)) return refuse({ code: 'STEP_DONE', step: planned.id })
  const gates = gatesOf(state, planned.id, context.nowMs, 'finish')
  if (gates.length > 0) return refuse({ code: 'GATE', gates })
  const { step, saw, checkedBy, toolRpm, toolMm } = intention
  const unfit = unfitSpeed(state, planned, intention)
  if (unfit) return refuse(unfit)
  const unchecked = notChecked(state, planned, intention, context)
  if (unchecked) return refuse(unchecked)
  const entry = context.newId()
  const finished: BatchDraft = {
    id: entry,
    kind: 'step-finished',
    body: {
      step,
      ...(saw === undefined ? {} : { saw }),
      ...(checkedBy === undefined ? {} : { checkedBy }),
      ...(toolRpm === undefined ? {} : { toolRpm }),
      ...(toolMm === undefined ? {} : { toolMm }),
    },
  }
  return accept([finished, ...signedAt(intention, entry)])
}

/** Steps that are finished by what was weighed, moved or measured, not by saying so. */
const ownEntry = new Set(['weigh', 'charge', 'combine', 'measure', 'make-up', 'sample', 'fill'])

function skip(state: BatchState, { step, reason }: Asks<'skip-step'>): Decision {
  if (isDone(state, step)) return refuse({ code: 'STEP_DONE', step })
  return missingStep(state, step) ?? withReason(reason, { kind: 'step-skipped', body: { step, reason } })
}

/** What is physically impossible is passed by nobody. */
function passGate(state: BatchState, { step, gate, detail, reason }: Asks<'pass-gate'>, context: Context): Decision {
  const missing = missingStep(state, step)
  if (missing) return missing
  const shut = gatesOf(state, step, context.nowMs).filter((each) => each.key === gate && !each.passable)
  if (shut.length > 0) return refuse({ code: 'GATE', gates: shut })
  return withReason(reason, { kind: 'gate-passed', body: { step, gate, detail, reason } })
}

/** A timer is an absolute deadline: it outlives sleep, reload and a dead battery. */
function startTimer(state: BatchState, intention: Asks<'start-timer'>, context: Context): Decision {
  const { label, minutes, step } = intention
  if (!(minutes > 0 && minutes <= 14 * 24 * 60)) return refuse({ code: 'MINUTES_BAD' })
  if (step !== undefined && !state.plan.byId.has(step)) return refuse({ code: 'NO_SUCH_STEP', step })
  const gates = step === undefined ? [] : gatesOf(state, step, context.nowMs)
  if (gates.length > 0) return refuse({ code: 'GATE', gates })
  const deadlineAtMs = context.nowMs + Math.round(minutes * 60_000)
  return one({
    kind: 'timer-started',
    body: {
      timer: context.newId(),
      label,
      startedAtMs: context.nowMs,
      deadlineAtMs,
      ...(step === undefined ? {} : { step }),
    },
  })
}

function acknowledge(state: BatchState, intention: Asks<'acknowledge-timer'>, context: Context): Decision {
  const timer = state.timers.get(intention.timer)
  if (!timer) return refuse({ code: 'NO_SUCH_TIMER' })
  if (timer.acknowledged) return accept([])
  const lateMs = context.nowMs - timer.deadlineAtMs
  return one({ kind: 'timer-acknowledged', body: { timer: timer.id, lateMs } })
}

function note(state: BatchState, { text, step, deviation }: Asks<'note'>): Decision {
  if (text.trim() === '') return refuse({ code: 'REASON_MISSING' })
  if (deviation !== undefined && !state.deviations.has(deviation)) return refuse({ code: 'NO_SUCH_DEVIATION' })
  return one({
    kind: 'noted',
    body: {
      text: text.trim(),
      ...(step === undefined ? {} : { step }),
      ...(deviation === undefined ? {} : { deviation }),
    },
  })
}

function handOver(state: BatchState, { to }: Asks<'hand-over'>): Decision {
  if (to === state.person) return refuse({ code: 'SAME_PERSON_ALREADY' })
  return one({ kind: 'person-changed', body: { person: to, from: state.person } })
}
