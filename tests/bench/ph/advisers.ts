import { advisePh, chargePoints, type PhProblem } from '../../../src/trade/acidity'
import { type ChargeCurve, chargeCurve } from '../../../src/trade/charge-curve'
import { microgramsFromGrams } from '../../../src/trade/mass'
import type { Adviser, Seen } from './batch'

const stop = { stop: true } as const

/** Ours, with the charge curve of an earlier batch or without; it never knows what kind of batch it is. */
export const ours =
  (earlier?: ChargeCurve | null): Adviser =>
  (seen) => {
    const advice = advisePh({ ...problemOf(seen), ...(earlier ? { earlier } : {}) })
    return advice.ok && advice.value.do === 'add' ? advice.value.doseUg / 1e6 : stop
  }

/** What a batch that was brought to its pH tells the next one of its formula. */
export const learntFrom = (seen: Seen): ChargeCurve | null => chargeCurve(chargePoints(problemOf(seen)))

/** A straight line through the last two readings to the middle of the window, after a first 0.05 % of the batch. */
export const secant: Adviser = ({ mass, target, history }) => {
  const [before, last] = history.slice(-2)
  if (before === undefined) return stop
  if (last === undefined) return target.lo <= before.pH && before.pH <= target.hi ? stop : 0.0005 * mass
  if (target.lo <= last.pH && last.pH <= target.hi) return stop
  const slope = (last.pH - before.pH) / (last.g - before.g)
  const grams = ((target.lo + target.hi) / 2 - last.pH) / slope
  return Number.isFinite(grams) && grams > 0 ? grams : 0.0005 * mass
}

/** A tenth of a per cent at a time until it is in the window. */
export const fixedSteps: Adviser = ({ mass, target, history }) => {
  const ph = history.at(-1)?.pH ?? target.lo
  return target.lo <= ph && ph <= target.hi ? stop : 0.001 * mass
}

function problemOf({ mass, target, adj, d, history }: Seen): PhProblem {
  const { sp } = adj
  return {
    massUg: microgramsFromGrams(mass),
    window: { low: target.lo, high: target.hi },
    adjuster: {
      kind: adj.dir < 0 ? 'acid' : 'base',
      strength: adj.w,
      molarMass: adj.mw,
      strongCharge: adj.sid,
      ...(sp !== null && 'pKas' in sp ? { species: { fullCharge: sp.z0, pKas: sp.pKas } } : {}),
    },
    stepUg: microgramsFromGrams(d),
    records: history.map(({ g, pH }) => ({ addedUg: Math.round(g * 1e6), ph: pH })),
  }
}
