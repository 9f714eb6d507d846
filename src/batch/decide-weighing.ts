import { massIn } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { accept, refuse } from '../trade/result'
import { judge } from '../trade/tolerance'
import { netOf, type Reading } from '../trade/weighing'
import { correctLot } from './correct-lot'
import { canBeStruck } from './fold'
import { gatesOf, lotInUse } from './gates'
import type { Context, Intention } from './intention'
import type { BatchDraft } from './kinds'
import { assayRatio } from './plan-batch'
import { bandOfStep, isDone, statusOf } from './progress'
import type { BatchRefusal, Decision } from './refusal'
import { badMass } from './sanity'
import { settle } from './settle'
import { notChecked, signedAt } from './signing'
import type { BatchState } from './state'
import { type Weighing, weighingOf } from './weighing-of'

type WeighingIntention = Extract<
  Intention,
  { do: 'weigh' | 'leave-short' | 'take-out' | 'settle' | 'strike' | 'correct-lot' }
>

/** Rules of the weighing itself: what counts as in, over, taken out, settled, struck. */
export function decideWeighing(state: BatchState, intention: WeighingIntention, context: Context): Decision {
  switch (intention.do) {
    case 'weigh':
      return weigh(state, intention, context)
    case 'leave-short':
      return leaveShort(state, intention, context)
    case 'take-out':
      return takeOut(state, intention)
    case 'settle':
      return settle(state, intention)
    case 'strike':
      return strike(state, intention)
    case 'correct-lot':
      return correctLot(state, intention, context)
  }
}

function weigh(state: BatchState, intention: Extract<Intention, { do: 'weigh' }>, context: Context): Decision {
  const planned = state.plan.byId.get(intention.step)
  if (!planned) return refuse({ code: 'NO_SUCH_STEP', step: intention.step })
  if (planned.step.kind !== 'weigh' || !planned.line) return refuse({ code: 'NOT_FOR_THIS_STEP', step: intention.step })
  if (isDone(state, planned.id)) return refuse({ code: 'STEP_DONE', step: planned.id })
  const lot = lotInUse(state, planned.line.line.id, intention.lot)
  if (intention.lot !== undefined && !lot) {
    return refuse({ code: 'OTHER_MATERIAL', lot: intention.lot, line: planned.line.material.name })
  }
  const gates = gatesOf(state, planned.id, context.nowMs, 'begin', lot?.id)
  if (gates.length > 0) return refuse({ code: 'GATE', gates })
  if (!readingsOf(intention.reading).every(Number.isSafeInteger)) return refuse({ code: 'MASS_NOT_WHOLE' })
  const net = netOf(intention.reading)
  if (!net.ok) return net
  const weighing = weighingOf(state, planned.id, lot?.id)
  if (!weighing) return refuse({ code: 'NOT_FOR_THIS_STEP', step: planned.id })
  const tooMuch = overCapacity(state, weighing, net.value)
  if (tooMuch) return refuse(tooMuch)
  const unchecked = notChecked(state, planned, intention, context)
  if (unchecked) return refuse(unchecked)
  const entry = context.newId()
  const weighed: BatchDraft = {
    id: entry,
    kind: 'weighed',
    body: {
      step: planned.id,
      line: planned.line.line.id,
      vessel: weighing.vessel,
      netUg: net.value,
      mode: intention.reading.mode,
      readings: readingsOf(intention.reading),
      targetUg: weighing.targetUg,
      lowUg: weighing.lowUg,
      highUg: weighing.highUg,
      balance: weighing.balance.id,
      ...(lot ? { lot: lot.id } : {}),
      ...(intention.checkedBy === undefined ? {} : { checkedBy: intention.checkedBy }),
    },
    ...(intention.source === undefined ? {} : { source: intention.source }),
  }
  const countedUg = weighing.countedUg + Math.round(net.value * assayRatio(planned.line, lot?.id))
  const band = bandOfStep(state, planned)
  const written = [weighed, ...signedAt(intention, entry)]
  if (judge(countedUg, band, weighing.stepUg) !== 'over') return accept(written)
  const noticed: BatchDraft = {
    kind: 'deviation-noticed',
    body: {
      deviation: context.newId(),
      entry,
      step: planned.id,
      line: planned.line.line.id,
      direction: 'over',
      byUg: countedUg - weighing.targetUg,
      inCup: weighing.inCup,
    },
  }
  return accept([...written, noticed])
}

function overCapacity(state: BatchState, weighing: Weighing, netUg: Micrograms): BatchRefusal | null {
  const { balance, vessel } = weighing
  if (netUg > balance.capacityUg) {
    return { code: 'OVER_BALANCE', massUg: netUg, capacityUg: balance.capacityUg, balance: balance.name }
  }
  const kept = state.plan.vessels.get(vessel)
  if (kept?.capacityUg === undefined) return null
  const roomUg = kept.capacityUg - massIn(state.ledger, vessel)
  return netUg > roomUg ? { code: 'OVER_VESSEL', massUg: netUg, roomUg, vessel: kept.name } : null
}

function readingsOf(reading: Reading): readonly Micrograms[] {
  switch (reading.mode) {
    case 're-tare':
      return [reading.readingUg]
    case 'cumulative':
      return [reading.previousUg, reading.readingUg]
    case 'by-difference':
      return [reading.beforeUg, reading.afterUg]
  }
}

function leaveShort(
  state: BatchState,
  intention: Extract<Intention, { do: 'leave-short' }>,
  context: Context,
): Decision {
  const planned = state.plan.byId.get(intention.step)
  const step = state.steps.get(intention.step)
  const last = step?.weighings.at(-1)
  if (!planned?.line || !step) return refuse({ code: 'NO_SUCH_STEP', step: intention.step })
  if (!last || statusOf(state, planned.id) !== 'part') return refuse({ code: 'NOTHING_WEIGHED' })
  if (intention.reason.trim() === '') return refuse({ code: 'REASON_MISSING' })
  const byUg = (step.targets.at(-1) ?? 0) - step.countedUg
  const deviation = context.newId()
  return accept([
    {
      kind: 'deviation-noticed',
      body: {
        deviation,
        entry: last.id,
        step: planned.id,
        line: planned.line.line.id,
        direction: 'under',
        byUg,
        inCup: false,
      },
    },
    {
      kind: 'remedy-chosen',
      body: {
        deviation,
        remedy: 'accept',
        reason: intention.reason,
        totalUg: state.totalUg - byUg,
        heldBackUg: state.heldBackUg,
        targets: [],
      },
    },
  ])
}

function takeOut(state: BatchState, intention: Extract<Intention, { do: 'take-out' }>): Decision {
  const weighing = weighingOf(state, intention.step)
  const step = state.steps.get(intention.step)
  if (!weighing || !step) return refuse({ code: 'NO_SUCH_STEP', step: intention.step })
  if (!weighing.inCup) return refuse({ code: 'NOT_IN_CUP' })
  const bad = badMass(intention.massUg)
  if (bad) return refuse(bad)
  const heldUg = massIn(state.ledger, weighing.vessel)
  if (intention.massUg > heldUg) return refuse({ code: 'MORE_THAN_HELD', askedUg: intention.massUg, heldUg })
  return accept([
    {
      kind: 'discarded',
      body: {
        vessel: weighing.vessel,
        massUg: intention.massUg,
        line: weighing.planned.line.id,
        reason: intention.reason,
      },
    },
  ])
}

function strike(state: BatchState, intention: Extract<Intention, { do: 'strike' }>): Decision {
  const entry = state.entries.find((each) => each.event.id === intention.entry)
  if (!entry) return refuse({ code: 'NO_SUCH_ENTRY' })
  if (entry.struck) return refuse({ code: 'STRUCK_ALREADY' })
  if (!canBeStruck(entry.event.kind)) return refuse({ code: 'CANNOT_BE_STRUCK', kind: entry.event.kind })
  if (intention.reason.trim() === '') return refuse({ code: 'REASON_MISSING' })
  return accept([{ kind: 'struck', body: { entry: intention.entry, reason: intention.reason } }])
}
