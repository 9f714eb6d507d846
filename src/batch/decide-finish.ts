import type { Micrograms } from '../trade/mass'
import { accept, refuse } from '../trade/result'
import { gatesOf, lotInUse } from './gates'
import type { Context, Intention } from './intention'
import type { BatchDraft } from './kinds'
import { aboveTheory, makeUpOf, readingUncertaintyUg } from './make-up'
import { isDone, vesselNow } from './progress'
import type { BatchRefusal, Decision } from './refusal'
import { qsLineOf } from './room'
import { badMass } from './sanity'
import type { BatchState } from './state'
import { cannotTake, tooFull } from './vessel-room'

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
  if (grossUg !== undefined && makeup.tareUg !== undefined && grossUg < makeup.tareUg) {
    return refuse({ code: 'BELOW_TARE', grossUg, tareUg: makeup.tareUg })
  }
  if (!makeup.possible) return refuse({ code: 'LOSS_IMPOSSIBLE', lossUg: makeup.lossUg })
  const above = aboveTheory(makeup.aboveUg, true)
  if (makeup.aboveUg > 0 && !state.steps.get(step)?.gatesPassed.has(above.key)) {
    return refuse({ code: 'GATE', gates: [above] })
  }
  const full = tooFull(state, makeup.vessel, netUg - makeup.lossUg)
  if (full) return refuse(full)
  const body = {
    step,
    vessel: makeup.vessel,
    line,
    netUg,
    ...(grossUg === undefined ? {} : { grossUg }),
    ...(makeup.aboveUg > 0 ? { aboveUg: makeup.aboveUg } : {}),
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
  if (intention.do === 'fill') {
    const bad = badFilling(state, vessel, intention)
    if (bad) return refuse(bad)
    const { units, grossBeforeUg, grossAfterUg } = intention
    const read = {
      ...(grossBeforeUg === undefined ? {} : { grossBeforeUg }),
      ...(grossAfterUg === undefined ? {} : { grossAfterUg }),
    }
    return accept([{ kind: 'filled', body: { ...step, vessel, massUg, units, ...read } }])
  }
  return accept([
    { kind: 'sampled', body: { ...step, vessel, massUg, jars: intention.jars, purpose: intention.purpose } },
  ])
}

/** Whole units, and a vessel that gets lighter but never lighter than it is when empty. */
function badFilling(state: BatchState, vessel: string, filling: Asks<'fill'>): BatchRefusal | null {
  const { units, grossBeforeUg, grossAfterUg } = filling
  if (!Number.isSafeInteger(units) || units < 1) return { code: 'UNITS_BAD', units }
  for (const grossUg of [grossBeforeUg, grossAfterUg]) {
    const bad = grossUg === undefined ? null : badMass(grossUg)
    if (bad) return bad
  }
  if (grossBeforeUg !== undefined && grossAfterUg !== undefined && grossAfterUg >= grossBeforeUg) {
    return { code: 'VESSEL_NOT_LIGHTER', beforeUg: grossBeforeUg, afterUg: grossAfterUg }
  }
  const tareUg = state.vessels.get(vessel)?.tareUg
  const lightestUg = grossAfterUg ?? grossBeforeUg
  if (tareUg === undefined || lightestUg === undefined) return null
  return lightestUg < tareUg - readingUncertaintyUg(state, lightestUg)
    ? { code: 'BELOW_TARE', grossUg: lightestUg, tareUg }
    : null
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
