import { accept, refuse } from '../trade/result'
import { decideDisposition } from './decide-disposition'
import { decideFinish } from './decide-finish'
import { decideHeat } from './decide-heat'
import { decideMass } from './decide-mass'
import { decideProcess } from './decide-process'
import { decideStability } from './decide-stability'
import { decideWeighing } from './decide-weighing'
import type { Context, Intention } from './intention'
import type { BatchDraft } from './kinds'
import { withNoticed } from './notice'
import { planBatch } from './plan-batch'
import type { BatchRefusal, Decision } from './refusal'
import type { BatchState } from './state'

/**
 * Turns what a person wants into entries, or says why not: every rule of the bench stands here and in the rooms it
 * calls. `state` is null only for a batch that is to be opened. Nothing is written here.
 */
export function decide(state: BatchState | null, intention: Intention, context: Context): Decision {
  if (intention.do === 'open') return open(intention)
  if (state === null) return refuse({ code: 'NO_BATCH' })
  const closed = endedOrReadOnly(state, intention)
  if (closed) return refuse(closed)
  const decision = decideAct(state, intention, context)
  return decision.ok ? accept(withNoticed(state, decision.value, context)) : decision
}

function decideAct(state: BatchState, intention: Exclude<Intention, { do: 'open' }>, context: Context): Decision {
  switch (intention.do) {
    case 'weigh':
    case 'leave-short':
    case 'take-out':
    case 'settle':
    case 'strike':
    case 'correct-lot':
      return decideWeighing(state, intention, context)
    case 'discard-cup':
    case 'add-unplanned':
    case 'spill':
    case 'charge':
    case 'combine':
    case 'adjust':
      return decideMass(state, intention, context)
    case 'make-up':
    case 'record-loss':
    case 'sample':
    case 'fill':
      return decideFinish(state, intention, context)
    case 'read-temperature':
    case 'change-bath':
    case 'tell-surroundings':
      return decideHeat(state, intention, context)
    case 'plan-stability':
    case 'count-cycle':
    case 'pull':
      return decideStability(state, intention, context)
    case 'rework':
    case 'close':
      return decideDisposition(state, intention, context)
    default:
      return decideProcess(state, intention, context)
  }
}

/** After the end of a batch its follow-up goes on: later checks, notes, corrections. */
const afterTheEnd = new Set<Intention['do']>([
  'measure',
  'measure-all',
  'plan-stability',
  'count-cycle',
  'pull',
  'note',
  'strike',
  'acknowledge-timer',
  'notice-clock',
  'read-temperature',
  'sign',
  'sign-head',
  'picture',
])

/** A parked batch still takes what time does to it. */
const whileParked = new Set<Intention['do']>([
  'resume',
  'acknowledge-timer',
  'note',
  'notice-clock',
  'abandon',
  'hand-over',
  'strike',
  'sign',
  'sign-head',
  'picture',
])

function endedOrReadOnly(state: BatchState, intention: Intention): BatchRefusal | null {
  if (state.unknownKinds.size > 0) return { code: 'READ_ONLY', kinds: [...state.unknownKinds] }
  if (state.stage === 'closed' && (intention.do === 'close' || intention.do === 'rework')) return null
  if (state.stage === 'closed' || state.stage === 'abandoned') {
    return afterTheEnd.has(intention.do) ? null : { code: 'BATCH_ENDED', stage: state.stage }
  }
  if (state.stage === 'parked' && !whileParked.has(intention.do)) return { code: 'BATCH_PARKED' }
  return null
}

function open(intention: Extract<Intention, { do: 'open' }>): Decision {
  const plan = planBatch(intention.header)
  if (!plan.ok) return plan
  const drafts: BatchDraft[] = [{ kind: 'opened', body: intention.header }]
  if (intention.preflight.length > 0) drafts.push({ kind: 'preflight-checked', body: { items: intention.preflight } })
  return accept(drafts)
}
