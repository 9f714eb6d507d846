import { inSink } from '../trade/ledger'
import { accept, refuse } from '../trade/result'
import { absurdMeasurement } from './absurd'
import { gatesOf } from './gates'
import { msOf } from './instant'
import type { Context } from './intention'
import type { BatchDraft, Bodies } from './kinds'
import { vesselNow } from './progress'
import type { BatchRefusal, Decision } from './refusal'
import { unsoundResult, withMean } from './sound-result'
import type { BatchState } from './state'
import { cannotTake } from './vessel-room'

interface Asks {
  readonly results: readonly Bodies['measured'][]
  readonly late?: { readonly occurredAt: string; readonly reason: string }
}

/**
 * Rules of readings: they can be, their turn has come, and what was taken out for them leaves the ledger as sampled. Of
 * several in one pass all are written, or none.
 */
export function decideMeasure(state: BatchState, { results, late }: Asks, context: Context): Decision {
  if (results.length === 0) return refuse({ code: 'NOTHING_READ' })
  const drafts: BatchDraft[] = []
  for (const result of results) {
    const own = draftsOf(state, result, context)
    if ('code' in own) return refuse(own)
    drafts.push(...own.drafts)
  }
  if (late === undefined) return accept(drafts)
  if (!(msOf(late.occurredAt) <= context.nowMs)) return refuse({ code: 'MOMENT_BAD' })
  if (late.reason.trim() === '') return refuse({ code: 'REASON_MISSING' })
  const names = results.map(({ label }) => label).join(', ')
  const why: BatchDraft = { kind: 'noted', body: { text: `${names} entered late: ${late.reason.trim()}` } }
  const { occurredAt } = late
  return accept([...drafts.map((draft) => (draft.kind === 'measured' ? { ...draft, occurredAt } : draft)), why])
}

function draftsOf(state: BatchState, asked: Bodies['measured'], context: Context): Taken {
  const result = withMean(asked)
  const wrong = absurdMeasurement(result) ?? unsoundResult(result)
  if (wrong) return wrong
  const unfit = result.step === undefined ? null : tooEarly(state, result.step, context)
  if (unfit) return unfit
  const taken = sampleOf(state, result)
  return 'code' in taken ? taken : { drafts: [{ kind: 'measured', body: result }, ...taken.drafts] }
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
