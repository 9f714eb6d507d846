import type { Micrograms } from '../trade/mass'
import { accept, refuse } from '../trade/result'
import type { Gate } from './gate'
import { gatesOf, lotInUse } from './gates'
import type { Context, Intention } from './intention'
import type { BatchDraft } from './kinds'
import { makeUpOf } from './make-up'
import { isDone, vesselNow } from './progress'
import type { BatchRefusal, Decision } from './refusal'
import { cannotTake, qsLineOf, tooFull } from './room'
import { badMass } from './sanity'
import type { BatchState } from './state'

type FinishIntention = Extract<Intention, { do: 'make-up' | 'record-loss' | 'sample' | 'fill' }>

/** Rules of making up to weight, and of what leaves the batch as samples and as product. */
export function decideFinish(state: BatchState, intention: FinishIntention, context: Context): Decision {
  switch (intention.do) {
    case 'make-up':
      return makeUp(state, intention, context)
    case 'record-loss':
      return recordLoss(state, intention)
    case 'sample':
    case 'fill':
      return takeAway(state, intention, context)
  }
}

type Asks<D extends FinishIntention['do']> = Extract<FinishIntention, { do: D }>

function makeUp(state: BatchState, intention: Asks<'make-up'>, context: Context): Decision {
  const planned = state.plan.byId.get(intention.step)
  if (!planned) return refuse({ code: 'NO_SUCH_STEP', step: intention.step })
  if (planned.step.kind !== 'make-up') return refuse({ code: 'NOT_FOR_THIS_STEP', step: planned.id })
  if (isDone(state, planned.id)) return refuse({ code: 'STEP_DONE', step: planned.id })
  const gates = gatesOf(state, planned.id, context.nowMs)
  if (gates.length > 0) return refuse({ code: 'GATE', gates })
  const { step, grossUg, netUg, lot } = intention
  const bad = badMass(netUg, 0) ?? (grossUg === undefined ? null : badMass(grossUg))
  if (bad) return refuse(bad)
  const { line } = planned.step
  if (lot !== undefined && !lotInUse(state, line, lot)) {
    return refuse({ code: 'OTHER_MATERIAL', lot, line: state.plan.lines.get(line)?.material.name ?? line })
  }
  const makeup = makeUpOf(state, planned.step.vessel, line, grossUg)
  if (!makeup.possible) return refuse({ code: 'LOSS_IMPOSSIBLE', lossUg: makeup.lossUg })
  if (makeup.aboveUg > 0 && !state.steps.get(step)?.gatesPassed.has('ABOVE_THEORY')) {
    return refuse({ code: 'GATE', gates: [aboveTheory(makeup.aboveUg, true)] })
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
  const bad = badMass(grossUg)
  if (bad) return refuse(bad)
  const makeup = makeUpOf(state, vessel, line ?? '', grossUg)
  if (line === undefined || makeup.tareUg === undefined) return refuse({ code: 'NO_TARE_HERE', vessel })
  if (!makeup.possible) return refuse({ code: 'LOSS_IMPOSSIBLE', lossUg: makeup.lossUg })
  if (makeup.aboveUg > 0) return refuse({ code: 'GATE', gates: [aboveTheory(makeup.aboveUg, false)] })
  return accept(lossDrafts(makeup.vessel, line, makeup.lossUg))
}

/** A gain is no loss to be made up: something was not written down, or the tare is wrong. */
const aboveTheory = (aboveUg: Micrograms, passable: boolean): Gate => ({
  code: 'ABOVE_THEORY',
  key: 'ABOVE_THEORY',
  passable,
  aboveUg,
})

const lossDrafts = (vessel: string, line: string, massUg: Micrograms): readonly BatchDraft[] =>
  massUg > 0 ? [{ kind: 'evaporated', body: { vessel, massUg, line, seenBy: 'gross reading' } }] : []

function takeAway(state: BatchState, intention: Asks<'sample' | 'fill'>, context: Context): Decision {
  const unfit = intention.step === undefined ? null : unfitStep(state, intention.step, intention.do, context)
  if (unfit) return refuse(unfit)
  const vessel = vesselNow(state, intention.vessel)
  const cannot = cannotTake(state, vessel, intention.massUg)
  if (cannot) return refuse(cannot)
  const step = intention.step === undefined ? {} : { step: intention.step }
  const { massUg } = intention
  if (intention.do === 'fill')
    return accept([{ kind: 'filled', body: { ...step, vessel, massUg, units: intention.units } }])
  return accept([
    { kind: 'sampled', body: { ...step, vessel, massUg, jars: intention.jars, purpose: intention.purpose } },
  ])
}

/** Why a planned step is not the one, or not yet, for what is to be taken. */
function unfitStep(state: BatchState, id: string, kind: 'sample' | 'fill', context: Context): BatchRefusal | null {
  const planned = state.plan.byId.get(id)
  if (!planned) return { code: 'NO_SUCH_STEP', step: id }
  if (planned.step.kind !== kind) return { code: 'NOT_FOR_THIS_STEP', step: id }
  if (isDone(state, id)) return { code: 'STEP_DONE', step: id }
  const gates = gatesOf(state, id, context.nowMs)
  return gates.length > 0 ? { code: 'GATE', gates } : null
}
