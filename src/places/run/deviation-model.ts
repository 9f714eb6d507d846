import { consequencesOf, type RemedyOffer, remediesFor } from '../../batch/deviation'
import type { Intention } from '../../batch/intention'
import type { RemedyKind } from '../../batch/kinds'
import { openDeviation } from '../../batch/progress'
import type { BatchState, DeviationState } from '../../batch/state'
import { weighingOf } from '../../batch/weighing-of'
import { massIn } from '../../trade/ledger'
import type { Micrograms } from '../../trade/mass'
import type { Draft } from './draft'
import type { RunModel } from './run-model'
import type { Reckoner, Typed } from './typed'

/** A way on. What is in a cup can be taken out again; for what is in a vessel there are remedies. */
export interface Way {
  readonly kind: WayKind
  readonly feasible: boolean
  /** Absent where the cup is put right and the plan stays. */
  readonly offer?: RemedyOffer
}

export type WayKind = 'take-out' | 'discard-cup' | RemedyKind

/** What stands beside the number while a deviation of the step in hand is open. */
export interface DeviationPanel {
  readonly deviation: DeviationState
  readonly consequences: ReturnType<typeof consequencesOf>
  /** In order of merit; their places are their keys, from 1. */
  readonly ways: readonly Way[]
  readonly chosen: Way | null
  /** Shown beside the chosen one. */
  readonly compared: Way | null
  readonly reason: string
  readonly needsReason: boolean
}

/** What is not put right, or is thrown away, is told why. */
const asksWhy: ReadonlySet<WayKind> = new Set(['accept', 'discard', 'discard-cup'])

/** Null where nothing is open for the step. The first way on that can be gone is chosen until a person chooses. */
export function deviationPanel(
  state: BatchState,
  stepId: string,
  draft: Draft,
  known?: readonly RemedyOffer[],
): DeviationPanel | null {
  const deviation = openDeviation(state, stepId)
  if (deviation === undefined) return null
  const offers = (known ?? remediesFor(state, deviation.id)).map(
    (offer): Way => ({ kind: offer.remedy, feasible: offer.feasible, offer }),
  )
  const cup: readonly Way[] = [
    { kind: 'take-out', feasible: true },
    { kind: 'discard-cup', feasible: true },
  ]
  const accept = offers.filter(({ kind }) => kind === 'accept')
  const isLot = deviation.cause === 'lot'
  // Taking some out again leaves the rest of a lot that was not to be used.
  const ways = deviation.inCup ? [...(isLot ? cup.slice(1) : cup), ...accept] : offers
  const wanted = ways.find((way) => way.kind === draft.fields.way && way.feasible)
  const chosen = wanted ?? ways.find((way) => way.feasible) ?? null
  return {
    deviation,
    consequences: consequencesOf(state, deviation.id),
    ways,
    chosen,
    reason: draft.fields.reason ?? '',
    compared: ways.find((way) => way.kind === draft.fields.compare && way.feasible && way !== chosen) ?? null,
    needsReason: chosen !== null && asksWhy.has(chosen.kind),
  }
}

/** The panel of the step in hand, as the batch and what is typed stand now. */
export function panelOf({ handle, stepId, draft }: RunModel, known?: readonly RemedyOffer[]): DeviationPanel | null {
  const { state } = handle.view.value
  return stepId.value === null ? null : deviationPanel(state, stepId.value, draft.value, known)
}

/** How much is to come out of the cup: typed as such, or as what the balance shows once some is out. */
export function takenOutUg(state: BatchState, stepId: string, draft: Draft, reckoner: Reckoner): Typed {
  const out = reckoner.mass(draft.fields.takeOut ?? '', { negative: false, zero: false })
  if (out.kind !== 'empty') return out
  const again = reckoner.mass(draft.fields.again ?? '', { negative: false })
  const weighing = weighingOf(state, stepId)
  if (again.kind !== 'number' || weighing === null) return again
  const heldUg: Micrograms = massIn(state.ledger, weighing.vessel)
  if (again.value >= heldUg) return { kind: 'bad', refusal: { code: 'NUMBER_ABSURD', value: again.value } }
  return { kind: 'number', value: heldUg - again.value }
}

/** What the record gives as the reason of a way that puts things right, until a person says otherwise. */
export function plainReason({ cause, direction }: DeviationState): string {
  switch (cause) {
    case 'forgotten':
      return 'forgotten'
    case 'foreign':
      return 'added by mistake'
    case 'loss':
      return 'lost'
    case 'lot':
      return 'taken from the wrong lot'
    default:
      return direction === 'over' ? 'weighed past its band' : 'weighed short of its band'
  }
}

/** What the chosen way comes to; null while something for it is still to be typed. */
export function intentionOfWay(
  panel: DeviationPanel,
  state: BatchState,
  stepId: string,
  draft: Draft,
  reckoner: Reckoner,
): Intention | null {
  const { chosen, reason, deviation, needsReason } = panel
  if (chosen === null || (needsReason && reason.trim() === '')) return null
  switch (chosen.kind) {
    case 'take-out': {
      const out = takenOutUg(state, stepId, draft, reckoner)
      const why = reason || 'over its band, still in the cup'
      return out.kind === 'number' ? { do: 'take-out', step: stepId, massUg: out.value, reason: why } : null
    }
    case 'discard-cup': {
      const vessel = weighingOf(state, stepId)?.vessel
      return vessel === undefined ? null : { do: 'discard-cup', vessel, reason }
    }
    default: {
      const remedy = {
        do: 'settle',
        deviation: deviation.id,
        remedy: chosen.kind,
        reason: reason || plainReason(deviation),
      } as const
      if (chosen.offer === undefined || chosen.kind === 'discard') return remedy
      const { totalUg, heldBackUg, targets } = chosen.offer
      return { ...remedy, figures: { totalUg, heldBackUg, targets } }
    }
  }
}
