import { massIn } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { accept, refuse } from '../trade/result'
import { gatesOf, lotInUse } from './gates'
import type { Context, Intention } from './intention'
import type { BatchDraft } from './kinds'
import { makeUpOf } from './make-up'
import type { PlannedStep } from './plan'
import { isDone, vesselNow } from './progress'
import type { BatchRefusal, Decision } from './refusal'
import type { BatchState } from './state'
import { lastReading } from './temperature-gates'

type MassIntention = Extract<
  Intention,
  {
    do:
      | 'discard-cup'
      | 'add-unplanned'
      | 'spill'
      | 'charge'
      | 'combine'
      | 'adjust'
      | 'make-up'
      | 'record-loss'
      | 'sample'
      | 'fill'
  }
>

/** Rules of moving mass otherwise than by a planned weighing. */
export function decideMass(state: BatchState, intention: MassIntention, context: Context): Decision {
  switch (intention.do) {
    case 'discard-cup':
      return discard(state, intention)
    case 'add-unplanned':
      return addUnplanned(state, intention, context)
    case 'spill':
      return takeFrom(state, intention.vessel, intention.massUg, intention.reason) ?? accept([spilled(intention)])
    case 'charge':
    case 'combine':
      return empty(state, intention, context)
    case 'adjust':
      return adjust(state, intention, context)
    case 'make-up':
      return makeUp(state, intention)
    case 'record-loss':
      return recordLoss(state, intention)
    case 'sample':
    case 'fill':
      return takeAway(state, intention)
  }
}

type Asks<D extends MassIntention['do']> = Extract<MassIntention, { do: D }>

const spilled = ({ vessel, massUg, reason }: Asks<'spill'>): BatchDraft => ({
  kind: 'spilled',
  body: { vessel, massUg, reason },
})

function discard(state: BatchState, { vessel, reason }: Asks<'discard-cup'>): Decision {
  if (!state.plan.vessels.has(vessel)) return refuse({ code: 'UNKNOWN_VESSEL_HERE', vessel })
  if (massIn(state.ledger, vessel) === 0) return refuse({ code: 'NOTHING_WEIGHED' })
  if (reason.trim() === '') return refuse({ code: 'REASON_MISSING' })
  return accept([{ kind: 'discarded', body: { vessel, massUg: 'all', reason } }])
}

function addUnplanned(state: BatchState, intention: Asks<'add-unplanned'>, context: Context): Decision {
  const { name, materialId, vessel, netUg, lot, reason } = intention
  if (name.trim() === '') return refuse({ code: 'NAME_MISSING' })
  if (netUg <= 0) return refuse({ code: 'MASS_NOT_POSITIVE' })
  const into = vesselNow(state, vessel)
  const full = tooFull(state, into, netUg)
  if (full) return refuse(full)
  const id = context.newId()
  return accept([
    {
      id,
      kind: 'unplanned-added',
      body: {
        component: `unplanned:${id}`,
        name: name.trim(),
        vessel: into,
        netUg,
        reason: reason.trim(),
        ...(materialId === undefined ? {} : { materialId }),
        ...(lot === undefined ? {} : { lot }),
      },
    },
  ])
}

/** Null where the mass can be taken. */
function takeFrom(state: BatchState, vessel: string, massUg: Micrograms, reason?: string): Decision | null {
  if (!state.plan.vessels.has(vessel)) return refuse({ code: 'UNKNOWN_VESSEL_HERE', vessel })
  if (massUg <= 0) return refuse({ code: 'MASS_NOT_POSITIVE' })
  const heldUg = massIn(state.ledger, vessel)
  if (massUg > heldUg) return refuse({ code: 'MORE_THAN_HELD', askedUg: massUg, heldUg })
  return reason !== undefined && reason.trim() === '' ? refuse({ code: 'REASON_MISSING' }) : null
}

function empty(state: BatchState, intention: Asks<'charge' | 'combine'>, context: Context): Decision {
  const planned = state.plan.byId.get(intention.step)
  const step = planned?.step
  if (!planned || !step) return refuse({ code: 'NO_SUCH_STEP', step: intention.step })
  if (step.kind !== intention.do) return refuse({ code: 'NOT_FOR_THIS_STEP', step: step.id })
  if (isDone(state, step.id)) return refuse({ code: 'STEP_DONE', step: step.id })
  const gates = gatesOf(state, step.id, context.nowMs)
  if (gates.length > 0) return refuse({ code: 'GATE', gates })
  const from = step.kind === 'charge' ? step.cup : step.from
  const to = vesselNow(state, step.vessel)
  const { residueUg, rinseUg } = intention
  const rinseLine = qsLineOf(state)
  if (rinseUg > 0 && rinseUg > state.heldBackUg) {
    return refuse({ code: 'RINSE_ABOVE_HELD_BACK', rinseUg, heldBackUg: state.heldBackUg })
  }
  const heldUg = massIn(state.ledger, from) + rinseUg
  if (residueUg < 0 || residueUg > heldUg) return refuse({ code: 'MORE_THAN_HELD', askedUg: residueUg, heldUg })
  const full = tooFull(state, to, heldUg - residueUg)
  if (full) return refuse(full)
  const moved = { step: step.id, from, to, residueUg, rinseUg, ...(rinseUg > 0 && rinseLine ? { rinseLine } : {}) }
  if (step.kind === 'charge') return accept([{ kind: 'charged', body: moved }])
  const fromC = lastReading(state, from, context.nowMs)?.temperatureC
  const toC = lastReading(state, to, context.nowMs)?.temperatureC
  const temperatures = { ...(fromC === undefined ? {} : { fromC }), ...(toC === undefined ? {} : { toC }) }
  return accept([{ kind: 'transferred', body: { ...moved, ...temperatures } }])
}

function adjust(state: BatchState, intention: Asks<'adjust'>, context: Context): Decision {
  const planned = state.plan.byId.get(intention.step)
  if (!planned?.line) return refuse({ code: 'NO_SUCH_STEP', step: intention.step })
  if (planned.step.kind !== 'adjust') return refuse({ code: 'NOT_FOR_THIS_STEP', step: planned.id })
  if (isDone(state, planned.id)) return refuse({ code: 'STEP_DONE', step: planned.id })
  if (intention.netUg <= 0) return refuse({ code: 'MASS_NOT_POSITIVE' })
  const lot = lotInUse(state, planned.line.line.id, intention.lot)
  const gates = [
    ...gatesOf(state, planned.id, context.nowMs, 'begin', lot?.id),
    ...maximumGate(state, planned, intention.netUg),
  ]
  if (gates.length > 0) return refuse({ code: 'GATE', gates })
  const vessel = vesselNow(state, planned.step.vessel)
  const full = tooFull(state, vessel, intention.netUg)
  if (full) return refuse(full)
  const { line, balance } = planned.line
  return accept([
    {
      kind: 'adjusted',
      body: {
        step: planned.id,
        line: line.id,
        vessel,
        netUg: intention.netUg,
        balance: balance.id,
        ...(lot ? { lot: lot.id } : {}),
      },
    },
  ])
}

/** More of an adjuster than the formula allows. */
function maximumGate(state: BatchState, planned: PlannedStep, netUg: Micrograms) {
  const amount = planned.line?.line.amount
  const step = state.steps.get(planned.id)
  if (amount?.kind !== 'as-needed' || step?.gatesPassed.has('ABOVE_MAXIMUM')) return []
  const mostUg = Math.round(amount.max * state.totalUg)
  const massUg = (step?.netUg ?? 0) + netUg
  if (massUg <= mostUg) return []
  return [{ code: 'ABOVE_MAXIMUM' as const, key: 'ABOVE_MAXIMUM', passable: true, massUg, mostUg }]
}

function makeUp(state: BatchState, intention: Asks<'make-up'>): Decision {
  const planned = state.plan.byId.get(intention.step)
  if (!planned) return refuse({ code: 'NO_SUCH_STEP', step: intention.step })
  if (planned.step.kind !== 'make-up') return refuse({ code: 'NOT_FOR_THIS_STEP', step: planned.id })
  if (isDone(state, planned.id)) return refuse({ code: 'STEP_DONE', step: planned.id })
  const { step, grossUg, netUg, lot } = intention
  if (netUg < 0) return refuse({ code: 'MASS_NOT_POSITIVE' })
  const { line } = planned.step
  const makeup = makeUpOf(state, planned.step.vessel, line, grossUg)
  if (!makeup.possible) return refuse({ code: 'LOSS_IMPOSSIBLE', lossUg: makeup.lossUg })
  if (makeup.aboveUg > 0 && !state.steps.get(step)?.gatesPassed.has('ABOVE_THEORY')) {
    const gate = { code: 'ABOVE_THEORY' as const, key: 'ABOVE_THEORY', passable: true, aboveUg: makeup.aboveUg }
    return refuse({ code: 'GATE', gates: [gate] })
  }
  const full = tooFull(state, makeup.vessel, netUg - makeup.lossUg)
  if (full) return refuse(full)
  const body = {
    step,
    vessel: makeup.vessel,
    line,
    netUg,
    ...(grossUg === undefined ? {} : { grossUg }),
    ...(lot === undefined ? {} : { lot }),
  }
  return accept([...lossDrafts(makeup.vessel, line, makeup.lossUg), { kind: 'made-up', body }])
}

function recordLoss(state: BatchState, { vessel, grossUg }: Asks<'record-loss'>): Decision {
  const line = qsLineOf(state)
  const makeup = makeUpOf(state, vessel, line ?? '', grossUg)
  if (line === undefined || makeup.tareUg === undefined) return refuse({ code: 'NO_TARE_HERE', vessel })
  if (!makeup.possible) return refuse({ code: 'LOSS_IMPOSSIBLE', lossUg: makeup.lossUg })
  return accept(lossDrafts(makeup.vessel, line, makeup.lossUg))
}

const lossDrafts = (vessel: string, line: string, massUg: Micrograms): readonly BatchDraft[] =>
  massUg > 0 ? [{ kind: 'evaporated', body: { vessel, massUg, line, seenBy: 'gross reading' } }] : []

function takeAway(state: BatchState, intention: Asks<'sample' | 'fill'>): Decision {
  const vessel = vesselNow(state, intention.vessel)
  const cannot = takeFrom(state, vessel, intention.massUg)
  if (cannot) return cannot
  const step = intention.step === undefined ? {} : { step: intention.step }
  const { massUg } = intention
  if (intention.do === 'fill')
    return accept([{ kind: 'filled', body: { ...step, vessel, massUg, units: intention.units } }])
  return accept([
    { kind: 'sampled', body: { ...step, vessel, massUg, jars: intention.jars, purpose: intention.purpose } },
  ])
}

function tooFull(state: BatchState, vesselId: string, massUg: Micrograms): BatchRefusal | null {
  const vessel = state.plan.vessels.get(vesselId)
  if (!vessel) return { code: 'UNKNOWN_VESSEL_HERE', vessel: vesselId }
  if (vessel.capacityUg === undefined) return null
  const roomUg = vessel.capacityUg - massIn(state.ledger, vesselId)
  return massUg > roomUg ? { code: 'OVER_VESSEL', massUg, roomUg, vessel: vessel.name } : null
}

/** The line that makes up to 100 %. */
export const qsLineOf = (state: BatchState): string | undefined =>
  [...state.plan.lines].find(([, planned]) => planned.line.amount.kind === 'qs')?.[0]
