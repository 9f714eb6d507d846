import { accept, refuse } from '../trade/result'
import { remediesFor, vesselToDiscard } from './deviation'
import type { Intention } from './intention'
import { openDeviations } from './open-deviations'
import type { Decision } from './refusal'
import { keepsLimits } from './remedy-figures'
import type { BatchState, DeviationState } from './state'

type Settle = Extract<Intention, { do: 'settle' }>

/** The way on that a person chose. Its figures are never trusted: they are tried against the batch as it is now. */
export function settle(state: BatchState, intention: Settle): Decision {
  const { remedy, reason } = intention
  const deviation = state.deviations.get(intention.deviation)
  if (!deviation) return refuse({ code: 'NO_SUCH_DEVIATION' })
  if (deviation.settled) return refuse({ code: 'SETTLED_ALREADY' })
  if (reason.trim() === '') return refuse({ code: 'REASON_MISSING' })
  if (remedy === 'discard') return startAgain(state, deviation, reason)
  const figures = intention.figures ?? figuresOf(state, intention)
  if (!figures || !keepsLimits(state, deviation, remedy, figures)) return refuse({ code: 'REMEDY_IMPOSSIBLE' })
  const { totalUg, heldBackUg, targets } = figures
  const also = remedy === 'accept' || deviation.cause === 'lot' ? [] : alsoSettled(state, deviation)
  const body = { deviation: deviation.id, remedy, reason, totalUg, heldBackUg, targets }
  return accept([{ kind: 'remedy-chosen', body: also.length > 0 ? { ...body, also } : body }])
}

const figuresOf = (state: BatchState, { deviation, remedy }: Settle): Settle['figures'] =>
  remediesFor(state, deviation).find((offer) => offer.remedy === remedy && offer.feasible)

/**
 * What is in a vessel is in every remedy's reckoning, so that one way on settles all that is off there; a lot that was
 * not to be used is mended by no figures.
 */
const alsoSettled = (state: BatchState, deviation: DeviationState): readonly string[] =>
  openDeviations(state)
    .filter((each) => each !== deviation && !each.inCup && each.cause !== 'lot')
    .map(({ id }) => id)

/** The fold settles what was in the vessel, and everything done in it is to do again. */
function startAgain(state: BatchState, deviation: DeviationState, reason: string): Decision {
  const vessel = vesselToDiscard(state, deviation)
  if (vessel === null) return refuse({ code: 'REMEDY_IMPOSSIBLE' })
  return accept([{ kind: 'discarded', body: { vessel, massUg: 'all', reason } }])
}
