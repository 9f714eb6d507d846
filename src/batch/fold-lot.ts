import type { Micrograms } from '../trade/mass'
import type { BatchEvent } from './kinds'
import { noticeOver } from './notice-over'
import { assayRatio } from './plan-batch'
import type { BatchState } from './state'

/** No mass moves; the weighing counts by the other lot's assay. Of one that went to waste or was struck, nothing. */
export function lotCorrected(state: BatchState, event: LotCorrected, atMs: number): void {
  const { entry, lot } = event.body
  for (const step of state.steps.values()) {
    const at = step.weighings.findIndex(({ id }) => id === entry)
    const weighing = step.weighings[at]
    const planned = weighing && state.plan.lines.get(weighing.body.line)
    if (!weighing || !planned) continue
    const { netUg, lot: was } = weighing.body
    const counted = (lotId: string | undefined): Micrograms => Math.round(netUg * assayRatio(planned, lotId))
    step.countedUg += counted(lot) - counted(was)
    useLot(state, was, -netUg)
    useLot(state, lot, netUg)
    const corrected = { ...weighing, body: { ...weighing.body, lot } }
    step.weighings[at] = corrected
    noticeOver(state, corrected, atMs)
    return
  }
}

export function useLot(state: BatchState, lot: string | undefined, massUg: Micrograms): void {
  if (lot !== undefined) state.usedByLot.set(lot, (state.usedByLot.get(lot) ?? 0) + massUg)
}

type LotCorrected = Extract<BatchEvent, { kind: 'lot-corrected' }>
