import { accept, refuse } from '../trade/result'
import { bandOf } from '../trade/tolerance'
import { absurdTemperature } from './absurd'
import { asksWhy } from './asks-why'
import { gatesOf, lotInUse } from './gates'
import type { Context, Intention, ReworkStep } from './intention'
import type { BatchDraft } from './kinds'
import { isDone, vesselNow } from './progress'
import type { BatchRefusal, Decision } from './refusal'
import { badMass } from './sanity'
import { signedDrafts, unfitSignatures } from './signing'
import type { BatchState } from './state'
import { cannotReturn, tooFull } from './vessel-room'

type DispositionIntention = Extract<Intention, { do: 'close' | 'rework' | 'add' }>
type Asks<D extends DispositionIntention['do']> = Extract<DispositionIntention, { do: D }>

/** Rules of what becomes of a batch, at its end and again after its rest, and of a rework. */
export function decideDisposition(state: BatchState, intention: DispositionIntention, context: Context): Decision {
  switch (intention.do) {
    case 'close':
      return close(state, intention)
    case 'rework':
      return rework(state, intention, context)
    case 'add':
      return add(state, intention, context)
  }
}

function close(state: BatchState, { decision, note, signatures }: Asks<'close'>): Decision {
  if (state.decision?.decision === decision) return refuse({ code: 'DECIDED_ALREADY', decision })
  const isSilent = (note ?? '').trim() === ''
  if (isSilent && (decision === 'reject' || asksWhy(state, decision))) return refuse({ code: 'REASON_MISSING' })
  const unfit = signatures && unfitSignatures(state, signatures)
  if (unfit) return refuse(unfit)
  const closed: BatchDraft = { kind: 'closed', body: { decision, ...(note === undefined ? {} : { note }) } }
  return accept([closed, ...signedDrafts(signatures?.by ?? [])])
}

function rework(state: BatchState, { reason, returned, steps }: Asks<'rework'>, context: Context): Decision {
  if (state.stage !== 'closed') return refuse({ code: 'NOT_CLOSED_YET' })
  if (state.decision?.decision === 'reject') return refuse({ code: 'REWORK_OF_REJECTED' })
  if (steps.length === 0) return refuse({ code: 'REWORK_WITHOUT_STEPS' })
  if (reason.trim() === '') return refuse({ code: 'REASON_MISSING' })
  const unfit = steps.map((step) => unfitStep(state, step)).find((each) => each !== null)
  if (unfit) return refuse(unfit)
  const cannot = returned && cannotReturn(state, returned.vessel, returned.massUg)
  if (cannot) return refuse(cannot)
  const part = state.parts.length + 1
  const phase = `Rework ${part}`
  const body = {
    part,
    reason: reason.trim(),
    ...(returned === undefined ? {} : { returned }),
    steps: steps.map((step) => ({ ...step, id: `rework-${context.newId()}`, phase })),
  }
  return accept([{ kind: 'reworked', body }])
}

/** A step of a rework names what the batch has, and figures that can be. */
function unfitStep(state: BatchState, step: ReworkStep): BatchRefusal | null {
  if (!state.plan.vessels.has(step.vessel)) return { code: 'UNKNOWN_VESSEL_HERE', vessel: step.vessel }
  if ('line' in step && step.line !== undefined && !state.plan.lines.has(step.line))
    return { code: 'UNKNOWN_LINE', step: step.kind, line: step.line }
  if ('check' in step && !state.header.revision.specification.some(({ id }) => id === step.check))
    return { code: 'UNKNOWN_CHECK', step: step.kind, check: step.check }
  switch (step.kind) {
    case 'add':
      return step.name.trim() === '' ? { code: 'NAME_MISSING' } : badMass(step.massUg)
    case 'mix':
    case 'hold':
      return step.minutes > 0 ? null : { code: 'MINUTES_BAD' }
    case 'rest':
      return step.hours > 0 ? null : { code: 'MINUTES_BAD' }
    case 'heat':
    case 'cool':
      return absurdTemperature(step.targetC)
    case 'note':
      return step.text.trim() === '' ? { code: 'NAME_MISSING' } : null
    default:
      return null
  }
}

/** An addition of a rework goes into the ledger like any other, and is done with; off its band it asks why. */
function add(state: BatchState, intention: Asks<'add'>, context: Context): Decision {
  const planned = state.plan.byId.get(intention.step)
  if (!planned) return refuse({ code: 'NO_SUCH_STEP', step: intention.step })
  const { step, id } = planned
  if (step.kind !== 'add') return refuse({ code: 'NOT_FOR_THIS_STEP', step: id })
  if (isDone(state, id)) return refuse({ code: 'STEP_DONE', step: id })
  const gates = gatesOf(state, id, context.nowMs)
  if (gates.length > 0) return refuse({ code: 'GATE', gates })
  const { netUg, lot, material, reason = '' } = intention
  const vessel = vesselNow(state, step.vessel)
  const cannot = badMass(netUg) ?? tooFull(state, vessel, netUg)
  if (cannot) return refuse(cannot)
  const band = bandOf(step.massUg, undefined, planned.line?.balance.stepUg ?? 10_000)
  const isOff = netUg < band.lowUg || netUg > band.highUg
  if (isOff && reason.trim() === '') return refuse({ code: 'OFF_TARGET', netUg, targetUg: step.massUg })
  const why: readonly BatchDraft[] =
    reason.trim() === '' ? [] : [{ kind: 'noted', body: { text: `${step.name}: ${reason.trim()}`, step: id } }]
  if (planned.line) {
    const { line, balance, material: own } = planned.line
    const used = lotInUse(state, line.id, lot)
    if (lot !== undefined && !used) return refuse({ code: 'OTHER_MATERIAL', lot, line: own.name })
    const body = { step: id, line: line.id, vessel, netUg, balance: balance.id, ...(used ? { lot: used.id } : {}) }
    return accept([{ kind: 'adjusted', body }, ...why])
  }
  const entry = context.newId()
  const body = {
    component: `unplanned:${entry}`,
    step: id,
    name: step.name,
    vessel,
    netUg,
    reason: `rework ${planned.part ?? ''}`.trim(),
    ...(step.materialId === undefined ? {} : { materialId: step.materialId }),
    ...(lot === undefined ? {} : { lot }),
    ...(material?.useLevel ? { most: material.useLevel.max } : {}),
    ...(material === undefined ? {} : { material }),
  }
  return accept([{ id: entry, kind: 'unplanned-added', body }, ...why])
}
