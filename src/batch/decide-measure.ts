import { inSink } from '../trade/ledger'
import { accept, refuse } from '../trade/result'
import { absurdMeasurement } from './absurd'
import { gatesOf } from './gates'
import { msOf } from './instant'
import type { Context, Intention } from './intention'
import type { BatchDraft, Bodies } from './kinds'
import { vesselNow } from './progress'
import type { BatchRefusal, Decision } from './refusal'
import { cannotTake } from './room'
import type { BatchState } from './state'

type Asks = Extract<Intention, { do: 'measure' }>

/** Rules of a reading: it can be, its turn has come, and what was taken out for it leaves the ledger as sampled. */
export function decideMeasure(state: BatchState, { result, late }: Asks, context: Context): Decision {
  const absurd = absurdMeasurement(result)
  if (absurd) return refuse(absurd)
  const unfit = result.step === undefined ? null : tooEarly(state, result.step, context)
  if (unfit) return refuse(unfit)
  const taken = sampleOf(state, result)
  if ('code' in taken) return refuse(taken)
  if (late === undefined) return accept([{ kind: 'measured', body: result }, ...taken.drafts])
  if (!(msOf(late.occurredAt) <= context.nowMs)) return refuse({ code: 'MOMENT_BAD' })
  if (late.reason.trim() === '') return refuse({ code: 'REASON_MISSING' })
  const why: BatchDraft = { kind: 'noted', body: { text: `${result.label} entered late: ${late.reason.trim()}` } }
  return accept([{ kind: 'measured', body: result, occurredAt: late.occurredAt }, ...taken.drafts, why])
}

/** A planned reading waits for its turn while the batch is made; what is read of a finished batch is a follow-up. */
function tooEarly(state: BatchState, step: string, context: Context): BatchRefusal | null {
  if (!state.plan.byId.has(step)) return { code: 'NO_SUCH_STEP', step }
  if (state.stage !== 'in-hand') return null
  const gates = gatesOf(state, step, context.nowMs).filter((gate) => gate.code === 'ORDER')
  return gates.length > 0 ? { code: 'GATE', gates } : null
}

type Taken = BatchRefusal | { readonly drafts: readonly BatchDraft[] }

/** Once samples were put aside or the batch is filled, a reading is made of those, and takes nothing out of a vessel. */
function sampleOf(state: BatchState, { sampleUg, vessel: named, step, label }: Bodies['measured']): Taken {
  const vessel = named ?? (step === undefined ? undefined : state.plan.byId.get(step)?.step.vessel)
  const isPutAway = inSink(state.ledger, 'filled') > 0 || hasJars(state) || state.stage !== 'in-hand'
  if (sampleUg === undefined || vessel === undefined || isPutAway) return { drafts: [] }
  const from = vesselNow(state, vessel)
  const cannot = cannotTake(state, from, sampleUg)
  if (cannot) return cannot
  return { drafts: [{ kind: 'sampled', body: { vessel: from, massUg: sampleUg, jars: 0, purpose: label } }] }
}

const hasJars = (state: BatchState): boolean =>
  state.plan.steps.some(({ id, step }) => step.kind === 'sample' && state.steps.get(id)?.finished !== undefined)
