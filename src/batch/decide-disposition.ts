import { accept, refuse } from '../trade/result'
import { absurdTemperature } from './absurd'
import { asksWhy } from './asks-why'
import type { Context, Intention, ReworkStep } from './intention'
import type { BatchDraft } from './kinds'
import { acceptedAsLeft, lotsBeside, planRework } from './plan-rework'
import type { BatchRefusal, Decision } from './refusal'
import { badMass } from './sanity'
import { signedDrafts, unfitSignatures } from './signing'
import type { BatchState } from './state'
import { cannotReturn, tooFull } from './vessel-room'

type DispositionIntention = Extract<Intention, { do: 'close' | 'rework' }>
type Asks<D extends DispositionIntention['do']> = Extract<DispositionIntention, { do: D }>

/** Rules of what becomes of a batch, at its end and again after its rest, and of a rework. */
export function decideDisposition(state: BatchState, intention: DispositionIntention, context: Context): Decision {
  switch (intention.do) {
    case 'close':
      return close(state, intention)
    case 'rework':
      return rework(state, intention, context)
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
  const cannot =
    (returned && cannotReturn(state, returned.vessel, returned.massUg)) ?? overfilled(state, steps, returned)
  if (cannot) return refuse(cannot)
  const planned = planRework(state, steps, context.newId)
  const body = {
    part: state.parts.length + 1,
    reason: reason.trim(),
    ...(returned === undefined ? {} : { returned }),
    ...planned,
  }
  return accept([...acceptedAsLeft(state), { kind: 'reworked', body }, ...lotsBeside(steps, planned)])
}

/** A vessel that does not hold what goes back into it with all that is added. */
function overfilled(
  state: BatchState,
  steps: Asks<'rework'>['steps'],
  returned: Asks<'rework'>['returned'],
): BatchRefusal | null {
  const vessels = [...new Set(steps.map(({ vessel }) => vessel))]
  const refusals = vessels.map((vessel) => {
    const added = steps.map((step) => (step.kind === 'add' && step.vessel === vessel ? step.massUg : 0))
    const addedUg = added.reduce((sum, massUg) => sum + massUg, returned?.vessel === vessel ? returned.massUg : 0)
    return addedUg === 0 ? null : tooFull(state, vessel, addedUg)
  })
  return refusals.find((each) => each !== null) ?? null
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
