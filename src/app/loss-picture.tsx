import type { LossCheck } from '../batch/reconciliation'
import { type FallRow, Waterfall } from '../parts/waterfall'
import { type LossKind, type LossStep, lossSteps } from '../trade/loss-steps'
import type { Format } from './format'

const names: Readonly<Record<LossKind, string>> = {
  'put in': 'More put in',
  evaporated: 'Evaporated',
  sampled: 'Sampled',
  residue: 'Left in vessels',
  spilled: 'Spilled',
  discarded: 'Thrown away',
  unexplained: 'Unexplained',
}

interface LossPictureProps {
  check: Pick<LossCheck, 'sums' | 'isFlagged'>
  format: Format
  stepUg?: number | undefined
}

/** Where a batch's mass went, from theoretical to actual, as one picture. */
export function LossPicture({ check, format, stepUg }: LossPictureProps) {
  const { theoreticalUg, steps, actualUg } = lossSteps(check.sums)
  const filled = check.sums.unexplainedUg !== null
  const end = filled ? 'Filled' : 'In the vessels'
  const grams = (massUg: number): string => `${format.mass(massUg, stepUg)} g`
  const rows: readonly FallRow[] = [
    { kind: 'whole', from: 0, to: theoreticalUg, label: 'Theoretical', text: grams(theoreticalUg), tone: 'whole' },
    ...steps
      .filter((step) => step.changeUg !== 0 || (step.kind === 'unexplained' && filled))
      .map((step) => rowOf(step, check.isFlagged, grams)),
    { kind: 'whole', from: 0, to: actualUg, label: end, text: grams(actualUg), tone: 'good' },
  ]
  return (
    <Waterfall
      rows={rows}
      caption={`From theoretical to ${end.toLowerCase()}`}
      cutText={(baseUg) => `The bars are cut: they begin at ${grams(baseUg)}.`}
    />
  )
}

function rowOf(step: LossStep, isFlagged: boolean, grams: (massUg: number) => string): FallRow {
  const { kind, changeUg, fromUg, toUg } = step
  const sign = changeUg > 0 ? '+' : changeUg < 0 ? '−' : ''
  const tone = kind === 'unexplained' ? (isFlagged ? 'over' : 'open') : changeUg > 0 ? 'gain' : 'loss'
  const label = kind === 'put in' && changeUg < 0 ? 'Less put in' : names[kind]
  return { kind: 'step', from: fromUg, to: toUg, label, text: `${sign}${grams(Math.abs(changeUg))}`, tone }
}
