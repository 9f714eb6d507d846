import { type Reconciliation, reconcile } from '../trade/composition'
import { inSink, massIn } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { type BatchEvent, isKnown } from './kinds'
import type { BatchState } from './state'

/** Where a batch's mass went, and whether more of it is unexplained than its formula lets pass. */
export interface LossCheck {
  readonly sums: Reconciliation
  /** The most that may be unexplained, either way; null where the formula states none. */
  readonly limitUg: Micrograms | null
  readonly isFlagged: boolean
}

export function lossCheckOf(state: BatchState): LossCheck {
  const isFilled = inSink(state.ledger, 'filled') > 0
  const sums = reconcile(state.ledger, state.totalUg, isFilled ? standingUg(state) : 0)
  const allowance = state.header.revision.lossAllowance
  const limitUg = allowance === undefined ? null : Math.round(allowance * state.totalUg)
  const { unexplainedUg } = sums
  return { sums, limitUg, isFlagged: limitUg !== null && unexplainedUg !== null && Math.abs(unexplainedUg) > limitUg }
}

type Filled = Extract<BatchEvent, { kind: 'filled' }>

/** What vessels were read to hold still after they were filled from: the last reading of each counts. */
function standingUg(state: BatchState): Micrograms {
  const last = new Map<string, Filled>()
  for (const { event, struck } of state.entries) {
    if (struck || !isKnown(event) || event.kind !== 'filled' || event.body.grossAfterUg === undefined) continue
    last.set(event.body.vessel, event)
  }
  return [...last.values()].reduce((sum, event) => sum + standingIn(state, event), 0)
}

/** Gross less tare; without a tare, what the books hold less what the vessel got lighter by beyond the units. */
function standingIn(state: BatchState, { body }: Filled): Micrograms {
  const { vessel, massUg, grossBeforeUg, grossAfterUg = 0 } = body
  const tareUg = state.vessels.get(vessel)?.tareUg
  if (tareUg !== undefined) return Math.max(0, grossAfterUg - tareUg)
  return grossBeforeUg === undefined ? 0 : massIn(state.ledger, vessel) + massUg - (grossBeforeUg - grossAfterUg)
}
