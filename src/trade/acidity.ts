import type { Adjuster } from './adjusters'
import { type CapacityStep, firstStep, nextStep, nextStepByTrend, stepByCurve } from './capacity-step'
import type { ChargeCurve, ChargePoint } from './charge-curve'
import { type Micrograms, roundDownToStep, roundToStep } from './mass'
import { gramsFromMicrograms } from './mass-ratio'
import { accept, type Result, refuse } from './result'
import { directionOf, gramsToSit, lastOf, ownCharge, type Titration } from './titration'

/** Adjuster in the batch so far (µg, everything added before the reading) and the pH read then. */
export interface PhRecord {
  readonly addedUg: Micrograms
  readonly ph: number
}

/** A batch on its way to a pH window. */
export interface PhProblem {
  readonly massUg: Micrograms
  readonly window: { readonly low: number; readonly high: number }
  readonly adjuster: Adjuster
  /** Readability of the balance that weighs the additions. */
  readonly stepUg: Micrograms
  /** First to last; the first is usually without adjuster. */
  readonly records: readonly PhRecord[]
  /** Buffer capacity assumed for a first addition, mol/kg/pH; what nothing is known of where absent. */
  readonly capacity?: number
  /**
   * plain: the capacity step alone · wary (the usual): the trend of the capacity, and the unsteadiness of hand and meter,
   * are reckoned with as well
   */
  readonly rule?: 'plain' | 'wary'
  /** The own charge of an earlier batch of the formula. */
  readonly earlier?: ChargeCurve | undefined
  /** The most that one addition may be, where the formula says so. */
  readonly mostUg?: Micrograms | undefined
}

export type PhAdvice =
  | {
      readonly do: 'add'
      readonly doseUg: Micrograms
      readonly why: DoseReason
      /** Where the pH should come to, and the furthest it can; absent where nothing is known yet. */
      readonly reaches?: { readonly expected: number; readonly furthest: number }
      /** The dose is so few steps of the balance that a weaker adjuster would be dosed better. */
      readonly dilute: boolean
    }
  | { readonly do: 'stop'; readonly why: StopReason }

/**
 * first: nothing is known yet · middle: to just below the middle of the window · careful: less, since the batch may hold
 * its pH less from here on · earlier: as an earlier batch took it · capped: the formula's largest portion · least: one
 * step of the balance
 */
export type DoseReason = 'first' | 'middle' | 'careful' | 'earlier' | 'capped' | 'least'

/** wrong-adjuster: nothing is in yet, and an acid is at hand where a base is needed, or the other way round. */
export type StopReason = 'in-window' | 'near-far-edge' | 'past-far-edge' | 'wrong-adjuster'

/** ADJUSTER_CANNOT_REACH: it would take more adjuster than there is batch, or none of it carries a charge there. */
export type PhRefusal =
  | { readonly code: 'PH_NOT_READ' }
  | { readonly code: 'PH_WINDOW_BAD' }
  | { readonly code: 'ADJUSTER_CANNOT_REACH'; readonly ph: number }

/** Low on purpose, mol/kg/pH: a class guessed one step too strong passes the window in one batch of seven. */
export const capacityOfUnknown = 0.00005

/** The part of the window next to each edge where nothing more is added, or not yet enough is in. */
const edgeShare = 0.1
/** A reading can be off, so a wary adviser goes on a little further from the edge that is met first. */
const waryNearShare = 0.2
/** How much less is added first, where nothing is known. */
const waryFirst = 0.85
/** How many steps of the balance a hand may miss by. */
const handSteps = 2
/** From so near to the far edge a miss of the hand may pass it. */
const waryPh = 1
const fewSteps = 5
/** What binary fractions can make of an edge. */
const tiny = 1e-9

/**
 * The next addition of a pH adjuster. Adjuster and water are known, so every reading gives one point of the batch's own
 * charge curve, whose slope is its buffer capacity; the dose goes to just below the middle of the window, and never
 * further than would reach 80 % across it if that capacity fell as fast as any mix of acids lets it. Simulation stands
 * behind it, no bench.
 */
export function advisePh(problem: PhProblem): Result<PhAdvice, PhRefusal> {
  const { window, records, adjuster, stepUg } = problem
  if (!(window.low < window.high)) return refuse({ code: 'PH_WINDOW_BAD' })
  const titration = titrationOf(problem)
  const last = records.at(-1)
  if (titration === null || last === undefined) return refuse({ code: 'PH_NOT_READ' })
  const stop = stopOf(problem, last.ph)
  if (stop !== null) return accept({ do: 'stop', why: stop })
  const isFirst = records.length === 1
  const step = stepOf(problem, titration)
  if (step.grams > gramsFromMicrograms(problem.massUg)) {
    return refuse({ code: 'ADJUSTER_CANNOT_REACH', ph: adjuster.kind === 'acid' ? window.high : window.low })
  }
  const exactUg = Math.round(gramsOf(problem, titration, step) * 1e6)
  const roundedUg = Math.max(stepUg, roundToStep(exactUg, stepUg))
  const capUg = Math.max(stepUg, roundDownToStep(problem.mostUg ?? roundedUg, stepUg))
  const doseUg = Math.min(roundedUg, capUg)
  const isKnown = !isFirst || problem.earlier !== undefined
  return accept({
    do: 'add',
    doseUg,
    why: doseUg < roundedUg ? 'capped' : exactUg < stepUg ? 'least' : reasonOf(problem, step),
    ...(isKnown ? { reaches: reachOf(titration, step, gramsFromMicrograms(doseUg)) } : {}),
    dilute: exactUg < fewSteps * stepUg,
  })
}

/** Own charge per kg at each record: what a later batch of the formula goes by. */
export function chargePoints(problem: Pick<PhProblem, 'massUg' | 'adjuster' | 'records'>): readonly ChargePoint[] {
  const titration = titrationOf({ ...problem, window: { low: 0, high: 14 } })
  if (titration === null) return []
  return titration.records.map((record) => ({
    ph: record.ph,
    molPerKg: ownCharge(titration, record) / titration.batchKg,
  }))
}

function titrationOf({
  massUg,
  adjuster,
  window,
  records,
}: Pick<PhProblem, 'massUg' | 'adjuster' | 'window' | 'records'>): Titration | null {
  const [first, ...others] = records.map(({ addedUg, ph }) => ({ grams: gramsFromMicrograms(addedUg), ph }))
  if (first === undefined) return null
  const [near, far] = adjuster.kind === 'acid' ? [window.high, window.low] : [window.low, window.high]
  return { batchKg: gramsFromMicrograms(massUg) / 1000, adjuster, near, far, records: [first, ...others] }
}

function stopOf({ window: { low, high }, adjuster, records, rule }: PhProblem, ph: number): StopReason | null {
  const width = high - low
  const [fromNear, toFar] = adjuster.kind === 'acid' ? [high - ph, ph - low] : [ph - low, high - ph]
  if (toFar < 0) return records.every(({ addedUg }) => addedUg === 0) ? 'wrong-adjuster' : 'past-far-edge'
  if (toFar < edgeShare * width - tiny) return 'near-far-edge'
  const enough = rule === 'plain' ? edgeShare : waryNearShare
  return fromNear >= enough * width - tiny ? 'in-window' : null
}

function stepOf({ earlier, records, rule, capacity }: PhProblem, titration: Titration): CapacityStep {
  if (earlier !== undefined) return stepByCurve(titration, earlier)
  if (records.length === 1) return firstStep(titration, capacity ?? capacityOfUnknown)
  return rule === 'plain' ? nextStep(titration) : nextStepByTrend(titration)
}

/** What to ask the hand for: near the window so much less that a miss of some steps of the balance does not pass it. */
function gramsOf(problem: PhProblem, titration: Titration, { grams, most }: CapacityStep): number {
  const { records, earlier, rule, stepUg } = problem
  if (rule === 'plain') return grams
  const asked = records.length === 1 && earlier === undefined ? waryFirst * grams : grams
  const miss = Math.abs(titration.far - lastOf(titration).ph) < waryPh ? handSteps * gramsFromMicrograms(stepUg) : 0
  return Math.min(asked, most - miss)
}

function reasonOf({ earlier, records }: PhProblem, { bound }: CapacityStep): DoseReason {
  if (earlier !== undefined) return 'earlier'
  return records.length === 1 ? 'first' : bound
}

/** Where a dose brings the pH on the curves that the step went by; halved 40 times, which is far below what a meter shows. */
function reachOf(titration: Titration, step: CapacityStep, grams: number): { expected: number; furthest: number } {
  const last = lastOf(titration)
  const direction = directionOf(titration)
  const sitsAt = (charge: (ph: number) => number): number => {
    let [here, beyond] = [0, 14]
    for (let halving = 0; halving < 40; halving += 1) {
      const middle = (here + beyond) / 2
      const ph = last.ph + direction * middle
      if (gramsToSit(titration, ph, charge(ph)) - last.grams < grams) here = middle
      else beyond = middle
    }
    return last.ph + direction * here
  }
  return { expected: sitsAt(step.chargeAt.expected), furthest: sitsAt(step.chargeAt.furthest) }
}
