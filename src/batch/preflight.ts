import type { Micrograms } from '../trade/mass'
import { relativeTolerance } from '../trade/relative-tolerance'
import { reliabilityOf, smallestReliableMass } from '../trade/reliability'
import type { Balance } from './catalogue'
import type { Finding } from './finding'
import type { BatchHeader } from './header'
import { loadsOf } from './loads'
import type { Plan, PlannedLine } from './plan'
import { lotFindings } from './preflight-lots'
import { premixesFor } from './premix-recipe'
import { rangeFaults } from './range-faults'

/** Ranges first, then lots, balances, vessels, each in the order of the formula. `onHand` by lot id; `todayIso` local. */
export function preflightOf(
  header: BatchHeader,
  plan: Plan,
  onHand: ReadonlyMap<string, Micrograms>,
  todayIso: string,
): readonly Finding[] {
  const lines = [...plan.lines.values()]
  return [
    ...rangeFaults(lines, header.revision.sharedLimits),
    ...lotFindings(lines, onHand, todayIso),
    ...lines.flatMap((planned) => balanceFinding(planned, lines, header)),
    ...vesselFindings(header, plan),
    ...qsFinding(lines, plan),
  ]
}

/** What must be settled or kept with a reason before the batch opens; the others are said, no more. */
export const mustBeSettled = ({ code }: Finding): boolean =>
  code !== 'NO_LOT' && code !== 'FAIRLY_SMALL' && code !== 'NOTHING_HELD_BACK' && code !== 'NO_QS'

function balanceFinding(planned: PlannedLine, lines: readonly PlannedLine[], header: BatchHeader): Finding[] {
  const { balance, targetUg, line, fraction } = planned
  if (targetUg > balance.capacityUg) return [{ code: 'OVER_BALANCE', about: line.id, balance, targetUg }]
  // An adjuster goes in by portions until the reading is right, and q.s. takes what is left: neither has a band.
  if (line.amount.kind !== 'fraction' || targetUg <= 0) return []
  const tolerance = relativeTolerance(targetUg, line.tolerance)
  const smallest = smallestReliableMass(balance, tolerance, false)
  const reliability = reliabilityOf(targetUg, smallest)
  if (reliability === 'good') return []
  if (reliability === 'fair') return [{ code: 'FAIRLY_SMALL', about: line.id, targetUg }]
  const goodFromUg = smallest.blocksBelow
  return [
    {
      code: 'TOO_SMALL',
      about: line.id,
      targetUg,
      tolerance,
      balance,
      goodFromUg,
      finer: finerFor(targetUg, tolerance, header.balances),
      sizeUg: Math.ceil(goodFromUg / fraction),
      premixes: premixesFor(planned, lines, goodFromUg),
    },
  ]
}

function finerFor(targetUg: Micrograms, tolerance: number, balances: readonly Balance[]) {
  const fit = balances
    .map((balance) => ({ balance, goodFromUg: smallestReliableMass(balance, tolerance, false).blocksBelow }))
    .filter(({ balance, goodFromUg }) => targetUg >= goodFromUg && targetUg <= balance.capacityUg)
    .sort((a, b) => b.goodFromUg - a.goodFromUg)
  return fit[0] ?? null
}

function vesselFindings(header: BatchHeader, plan: Plan): Finding[] {
  const { inVessel } = loadsOf(plan)
  return header.vessels.flatMap((vessel): Finding[] => {
    const peakUg = inVessel.get(vessel.id) ?? 0
    const room = header.revision.vessels.find(({ id }) => id === vessel.id)?.roomFactor ?? 1
    const neededUg = Math.round(peakUg * room)
    if (vessel.capacityUg !== undefined && neededUg > vessel.capacityUg)
      return [{ code: 'VESSEL_SMALL', about: vessel.id, peakUg, neededUg, capacityUg: vessel.capacityUg }]
    const { stirsUg } = vessel
    if (stirsUg === undefined || !isStirred(header, vessel.id)) return []
    return peakUg < stirsUg.min || peakUg > stirsUg.max
      ? [{ code: 'STIRRER_RANGE', about: vessel.id, peakUg, stirsUg }]
      : []
  })
}

const isStirred = ({ revision }: BatchHeader, vessel: string): boolean =>
  revision.procedure.some((step) => step.vessel === vessel && (step.kind === 'mix' || step.kind === 'hydrate'))

function qsFinding(lines: readonly PlannedLine[], plan: Plan): Finding[] {
  const qs = lines.find(({ line }) => line.amount.kind === 'qs')
  if (qs === undefined) return [{ code: 'NO_QS', about: '' }]
  return plan.heldBackUg === 0 ? [{ code: 'NOTHING_HELD_BACK', about: qs.line.id }] : []
}
