import type { Micrograms } from '../trade/mass'
import type { BatchEvent } from './kinds'
import { noticeOver } from './notice-over'
import { assayRatio } from './plan-batch'
import type { BatchState } from './state'

/** No mass moves; the weighing counts by the other lot's assay. Of one that went to waste or was struck, nothing. */
export function lotCorrected(state: BatchState, { body }: LotCorrected, atMs: number): void {
  const step = state.steps.get(body.step)
  const at = step?.weighings.findIndex(({ id }) => id === body.entry) ?? -1
  const weighing = step?.weighings[at]
  const planned = weighing && state.plan.lines.get(weighing.body.line)
  if (!weighing || !step || !planned) return
  const corrected = { ...weighing, body: { ...weighing.body, lot: body.lot } }
  const { netUg, lot: was } = weighing.body
  const move = (lot: string | undefined, sign: 1 | -1): void => {
    step.countedUg += sign * Math.round(netUg * assayRatio(planned, lot))
    useLot(state, lot, sign * netUg)
  }
  move(was, -1)
  move(body.lot, 1)
  step.weighings[at] = corrected
  noticeOver(state, corrected, atMs)
}

export function useLot(state: BatchState, lot: string | undefined, massUg: Micrograms): void {
  if (lot !== undefined) state.usedByLot.set(lot, (state.usedByLot.get(lot) ?? 0) + massUg)
}

type LotCorrected = Extract<BatchEvent, { kind: 'lot-corrected' }>
