import { massBalanceReading } from '../trade/composition'
import { massIn } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { expanded, uncertaintyOf } from '../trade/weighing'
import type { Balance } from './catalogue'
import { inBatchUg, lineTargetUg, weighStepsOf, wholeBatchUg } from './line-targets'
import { statusOf, vesselNow } from './progress'
import type { BatchState } from './state'

export interface MakeUp {
  readonly vessel: string
  readonly tareUg?: Micrograms
  /** What the vessel should weigh by the ledger; undefined without a tare. */
  readonly grossUg?: Micrograms
  /** What is gone since, read from the balance; 0 without a reading. */
  readonly lossUg: Micrograms
  /** More than the ledger knows of: an addition that was not written down, or a wrong tare. */
  readonly aboveUg: Micrograms
  /** False where more would be gone than there was of the volatile line. */
  readonly possible: boolean
  /** What brings the batch to its total, everything still to come counted; never below zero. */
  readonly toAddUg: Micrograms
}

/**
 * Make up to weight: a gross reading against the ledger's theoretical gross gives the loss, which is taken from `line`
 * (water). What was sampled or left behind is not made up: it left with its share of everything.
 */
export function makeUpOf(state: BatchState, vesselId: string, line: string, grossUg?: Micrograms): MakeUp {
  const vessel = vesselNow(state, vesselId)
  const tareUg = state.vessels.get(vessel)?.tareUg
  const missingUg = state.totalUg - wholeBatchUg(state) - stillToComeUg(state, line)
  if (tareUg === undefined) return { vessel, lossUg: 0, aboveUg: 0, possible: true, toAddUg: Math.max(0, missingUg) }
  const theoreticalUg = tareUg + massIn(state.ledger, vessel)
  if (grossUg === undefined) {
    const toAddUg = Math.max(0, missingUg)
    return { vessel, tareUg, grossUg: theoreticalUg, lossUg: 0, aboveUg: 0, possible: true, toAddUg }
  }
  const reading = { grossUg, tareUg, uncertaintyUg: readingUncertaintyUg(state, grossUg), component: line }
  const balance = massBalanceReading(state.ledger, vessel, reading)
  const lossUg = balance.status === 'loss' ? balance.differenceUg : 0
  return {
    vessel,
    tareUg,
    grossUg: theoreticalUg,
    lossUg,
    aboveUg: balance.status === 'gain' ? -balance.differenceUg : 0,
    possible: balance.possible,
    toAddUg: Math.max(0, missingUg + lossUg),
  }
}

/** The finest balance that can carry a load; the largest where none can. */
export function balanceFor(balances: readonly Balance[], loadUg: Micrograms): Balance | undefined {
  const byStep = [...balances].sort((a, b) => a.stepUg - b.stepUg)
  return byStep.find((balance) => balance.capacityUg >= loadUg) ?? byStep.at(-1)
}

/** Twice the standard uncertainty of two readings of that load. */
function readingUncertaintyUg(state: BatchState, grossUg: Micrograms): Micrograms {
  const balance = balanceFor(state.header.balances, grossUg)
  return balance ? Math.round(expanded(uncertaintyOf({ netUg: grossUg, balance, mode: 'cumulative' }))) : 0
}

/**
 * What is planned and not in: of lines still to be weighed, and of skipped ones, whose place the water does not take.
 * Adjusters count only as far as they are in.
 */
function stillToComeUg(state: BatchState, except: string): Micrograms {
  let sumUg = 0
  for (const [line, planned] of state.plan.lines) {
    if (line === except || planned.line.amount.kind === 'as-needed') continue
    const isIn = weighStepsOf(state, line).every(({ id }) => statusOf(state, id) === 'done')
    if (!isIn) sumUg += Math.max(0, lineTargetUg(state, line) - inBatchUg(state, line))
  }
  return sumUg
}
