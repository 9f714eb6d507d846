import { accept, refuse } from '../trade/result'
import { judge } from '../trade/tolerance'
import type { Lot } from './catalogue'
import type { Event } from './event'
import { isExpired, lotInUse } from './gates'
import type { Context, Intention } from './intention'
import type { BatchDraft, Bodies } from './kinds'
import type { PlannedStep } from './plan'
import { bandOfStep, isDone, vesselNow } from './progress'
import type { Decision } from './refusal'
import type { BatchState } from './state'
import { whatIf } from './what-if'

type Correct = Extract<Intention, { do: 'correct-lot' }>

/**
 * A weighing came from another lot than was written down. No mass moves: what changes is what it counts for (the other
 * lot's assay), whose stock it came from, and whether that lot may be used at all. Too much of it, too little of a line
 * that can take no more, and a lot that had expired or was not released are each a deviation with its ways on.
 */
export function correctLot(state: BatchState, intention: Correct, context: Context): Decision {
  const { entry, lot: lotId, opened, reason } = intention
  const weighing = weighingOfEntry(state, entry)
  if (weighing === undefined) return refuse({ code: 'NO_SUCH_ENTRY' })
  const { step, line, lot: was } = weighing.body
  const planned = state.plan.byId.get(step)
  if (!planned?.line) return refuse({ code: 'NO_SUCH_STEP', step })
  const known = lotInUse(state, line, lotId)
  const lot = known ?? opened
  if (lot?.id !== lotId || lot.materialId !== planned.line.material.id)
    return refuse({ code: 'OTHER_MATERIAL', lot: lotId, line: planned.line.material.name })
  if (was === lotId) return refuse({ code: 'NO_SUCH_ENTRY' })
  if (reason.trim() === '') return refuse({ code: 'REASON_MISSING' })
  const id = context.newId()
  const lots = [...(state.lotsOfLine.get(line) ?? []), lotId]
  const drafts: BatchDraft[] = [
    ...(known ? [] : [{ kind: 'lot-chosen', body: { line, lots, opened: [lot] } } as const]),
    { id, kind: 'lot-corrected', body: { step, entry, lot: lotId, reason } },
  ]
  const after = whatIf(state, drafts)
  return accept([...drafts, ...noticed(after, planned, weighing, { id, lot }, context)])
}

/** A weighing that counts, as it counts now. */
export const weighingOfEntry = (state: BatchState, entry: string): Event<'weighed', Bodies['weighed']> | undefined => {
  for (const { weighings } of state.steps.values()) {
    const found = weighings.find(({ id }) => id === entry)
    if (found) return found
  }
  return undefined
}

/** Whether a lot was not to be used when it was weighed. */
export const isBarred = (lot: Lot, atMs: number): boolean => isExpired(lot, atMs) || lot.status === 'quarantine'

function noticed(
  after: BatchState,
  planned: PlannedStep,
  weighing: Event<'weighed', Bodies['weighed']>,
  { id, lot }: { readonly id: string; readonly lot: Lot },
  context: Context,
): BatchDraft[] {
  const { step, line, vessel, netUg } = weighing.body
  const countedUg = after.steps.get(step)?.countedUg ?? 0
  const targetUg = after.steps.get(step)?.targets.at(-1) ?? 0
  const verdict = judge(countedUg, bandOfStep(after, planned), planned.line?.balance.stepUg ?? 1)
  const inCup = after.plan.vessels.get(vesselNow(after, vessel))?.kind === 'cup'
  const about = { entry: id, step, line, inCup }
  const { locksAfter } = planned.line?.line ?? {}
  const draft = (body: Omit<Bodies['deviation-noticed'], 'deviation' | keyof typeof about>): BatchDraft => ({
    kind: 'deviation-noticed',
    body: { deviation: context.newId(), ...about, ...body },
  })
  return [
    ...(isBarred(lot, context.nowMs) ? [draft({ direction: 'over', byUg: netUg, cause: 'lot' })] : []),
    ...(verdict === 'over' ? [draft({ direction: 'over', byUg: countedUg - targetUg })] : []),
    ...(verdict === 'under' && locksAfter !== undefined && isDone(after, locksAfter)
      ? [draft({ direction: 'under', byUg: targetUg - countedUg, cause: 'forgotten' })]
      : []),
  ]
}
