import type { Micrograms } from '../trade/mass'
import type { Balance } from './catalogue'
import type { BatchVessel } from './header'
import type { Plan, PlannedStep } from './plan'

/** What will stand on a balance and in a vessel in the course of a plan. */
export interface Loads {
  /** By line: the heaviest load of its weighings, vessel and what is already in it included. */
  readonly onBalance: ReadonlyMap<string, Micrograms>
  /** By vessel: the most that is in it. */
  readonly inVessel: ReadonlyMap<string, Micrograms>
}

/** Walks the steps in order; what is held back goes in at make-up. A tare not known counts as nothing. */
export function loadsOf(plan: Plan): Loads {
  const onBalance = new Map<string, Micrograms>()
  const inVessel = new Map<string, Micrograms>()
  const now = new Map<string, Micrograms>()
  const put = (vessel: string, massUg: Micrograms): Micrograms => {
    const heldUg = (now.get(vessel) ?? 0) + massUg
    now.set(vessel, heldUg)
    inVessel.set(vessel, Math.max(inVessel.get(vessel) ?? 0, heldUg))
    return heldUg + tareOf(plan.vessels.get(vessel))
  }
  const empty = (vessel: string): Micrograms => {
    const heldUg = now.get(vessel) ?? 0
    now.set(vessel, 0)
    return heldUg
  }
  for (const planned of plan.steps) {
    const { step } = planned
    if (step.kind === 'charge') put(step.vessel, empty(step.cup))
    if (step.kind === 'combine') put(step.vessel, empty(step.from))
    if (step.kind === 'make-up') put(step.vessel, plan.heldBackUg)
    const line = massLine(planned)
    if (line === undefined) continue
    const loadUg = put(step.vessel, planned.targetUg ?? 0)
    onBalance.set(line, Math.max(onBalance.get(line) ?? 0, loadUg))
  }
  return { onBalance, inVessel }
}

/** The finest balance that carries the load, else the one that carries most. */
export function finestFor(loadUg: Micrograms, balances: readonly Balance[]): Balance | undefined {
  const finestFirst = [...balances].sort((a, b) => a.stepUg - b.stepUg || a.capacityUg - b.capacityUg)
  return finestFirst.find(({ capacityUg }) => loadUg <= capacityUg) ?? largest(balances)
}

const massLine = ({ step }: PlannedStep): string | undefined =>
  step.kind === 'weigh' || step.kind === 'adjust' ? step.line : undefined

const tareOf = (vessel: BatchVessel | undefined): Micrograms => vessel?.tareUg ?? 0

const largest = (balances: readonly Balance[]): Balance | undefined =>
  balances.reduce<Balance | undefined>(
    (most, each) => (most && most.capacityUg >= each.capacityUg ? most : each),
    undefined,
  )
