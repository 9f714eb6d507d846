import type { BatchState } from './state'

/** What is known of the pH meter in this batch: its last calibration, and what speaks against trusting it. */
export interface PhMeter {
  readonly ageMs: number
  readonly slopePercent: number
  readonly old: boolean
  /** Outside 95–105 % of the slope that theory asks for. */
  readonly worn: boolean
}

const dayMs = 24 * 3_600_000
const slopes = { least: 95, most: 105 } as const

/** The last calibration that was recorded with the batch; null where there is none. */
export function phMeterOf(state: BatchState, nowMs: number): PhMeter | null {
  const last = state.instruments.findLast(({ check }) => check.kind === 'pH meter')
  if (last?.check.kind !== 'pH meter') return null
  const { slopePercent } = last.check
  const ageMs = nowMs - last.atMs
  return {
    ageMs,
    slopePercent,
    old: ageMs > dayMs,
    worn: slopePercent < slopes.least || slopePercent > slopes.most,
  }
}
