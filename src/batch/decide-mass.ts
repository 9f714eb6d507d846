import { massIn } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { accept, refuse } from '../trade/result'
import { gatesOf, lotInUse } from './gates'
import type { Context, Intention } from './intention'
import type { PlannedStep } from './plan'
import { isDone, vesselNow } from './progress'
import type { Decision } from './refusal'
import { qsLineOf } from './room'
import { badMass } from './sanity'
import type { BatchState } from './state'
import { lastReading } from './temperature-gates'
import { cannotTake, tooFull } from './vessel-room'

type MassIntention = Extract<
  Intention,
  { do: 'discard-cup' | 'add-unplanned' | 'spill' | 'charge' | 'combine' | 'adjust' }
>

/** Rules of moving mass otherwise than by a planned weighing, up to the making up. */
export function decideMass(state: BatchState, intention: MassIntention, context: Context): Decision {
  switch (intention.do) {
    case 'discard-cup':
      return discard(state, intention)
    case 'add-unplanned':
      return addUnplanned(state, intention, context)
    case 'spill':
      return spill(state, intention)
    case 'charge':
    case 'combine':
      return empty(state, intention, context)
    case 'adjust':
      return adjust(state, intention, context)
  }
}

type Asks<D extends MassIntention['do']> = Extract<MassIntention, { do: D }>

function spill(state: BatchState, { vessel, massUg, reason }: Asks<'spill'>): Decision {
  const cannot = cannotTake(state, vessel, massUg, reason)
  return cannot ? refuse(cannot) : accept([{ kind: 'spilled', body: { vessel, massUg, reason } }])
}

function discard(state: BatchState, { vessel, reason }: Asks<'discard-cup'>): Decision {
  if (!state.plan.vessels.has(vessel)) return refuse({ code: 'UNKNOWN_VESSEL_HERE', vessel })
  if (massIn(state.ledger, vessel) === 0) return refuse({ code: 'NOTHING_WEIGHED' })
  if (reason.trim() === '') return refuse({ code: 'REASON_MISSING' })
  return accept([{ kind: 'discarded', body: { vessel, massUg: 'all', reason } }])
}

function addUnplanned(state: BatchState, intention: Asks<'add-unplanned'>, context: Context): Decision {
  const { name, materialId, vessel, netUg, lot, reason, most, material } = intention
  if (name.trim() === '') return refuse({ code: 'NAME_MISSING' })
  const bad = badMass(netUg)
  if (bad) return refuse(bad)
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
        ...(most === undefined ? {} : { most }),
        ...(material === undefined ? {} : { material }),
      },
    },
  ])
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
  const bad = badMass(residueUg, 0) ?? badMass(rinseUg, 0)
  if (bad) return refuse(bad)
  const rinseLine = qsLineOf(state)
  if (rinseUg > 0 && rinseUg > state.heldBackUg) {
    return refuse({ code: 'RINSE_ABOVE_HELD_BACK', rinseUg, heldBackUg: state.heldBackUg })
  }
  const heldUg = massIn(state.ledger, from) + rinseUg
  if (residueUg > heldUg) return refuse({ code: 'MORE_THAN_HELD', askedUg: residueUg, heldUg })
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
  const bad = badMass(intention.netUg)
  if (bad) return refuse(bad)
  const lot = lotInUse(state, planned.line.line.id, intention.lot)
  if (intention.lot !== undefined && !lot) {
    return refuse({ code: 'OTHER_MATERIAL', lot: intention.lot, line: planned.line.material.name })
  }
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

/** What went in of an adjuster so far, in reworks too. */
const adjustedUg = (state: BatchState, { line }: PlannedStep): Micrograms =>
  state.plan.steps
    .filter((each) => each.step.kind === 'adjust' && each.line?.line.id === line?.line.id)
    .reduce((sum, { id }) => sum + (state.steps.get(id)?.netUg ?? 0), 0)

/** More of an adjuster than the formula allows. */
function maximumGate(state: BatchState, planned: PlannedStep, netUg: Micrograms) {
  const amount = planned.line?.line.amount
  const step = state.steps.get(planned.id)
  if (amount?.kind !== 'as-needed' || step?.gatesPassed.has('ABOVE_MAXIMUM')) return []
  const mostUg = Math.round(amount.max * state.totalUg)
  const massUg = adjustedUg(state, planned) + netUg
  if (massUg <= mostUg) return []
  return [{ code: 'ABOVE_MAXIMUM' as const, key: 'ABOVE_MAXIMUM', passable: true, massUg, mostUg }]
}
