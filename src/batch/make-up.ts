import { massBalanceReading } from '../trade/composition'
import { massIn } from '../trade/ledger'
import { type Micrograms, roundDownToStep, roundToStep } from '../trade/mass'
import { expanded, uncertaintyOf } from '../trade/reliability'
import type { Balance } from './catalogue'
import type { Gate } from './gate'
import { inBatchUg } from './in-batch'
import { lineTargetUg, weighStepsOf, wholeBatchUg } from './line-targets'
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
  /** The same as the balance under the vessel shows it, and no more than the vessel takes. */
  readonly proposedUg: Micrograms
  /** What the balance should show once that is in; undefined without a tare. */
  readonly fullGrossUg?: Micrograms
  /** What the vessel still takes; null where its capacity is not known. */
  readonly roomUg: Micrograms | null
  /** The balance that carries the vessel with what is to go in. */
  readonly balance?: Balance
}

/**
 * Make up to weight: a gross reading against the ledger's theoretical gross gives the loss, which is taken from `line`
 * (water). What was sampled or left behind is not made up: it left with its share of everything.
 */
export function makeUpOf(state: BatchState, vesselId: string, line: string, grossUg?: Micrograms): MakeUp {
  const vessel = vesselNow(state, vesselId)
  const tareUg = state.vessels.get(vessel)?.tareUg
  const missingUg = state.totalUg - wholeBatchUg(state) - stillToComeUg(state, line)
  const heldUg = massIn(state.ledger, vessel)
  const { lossUg, aboveUg, possible } = readLoss(state, { vessel, line, grossUg, tareUg })
  const toAddUg = Math.max(0, missingUg + lossUg)
  const loadUg = (grossUg ?? heldUg + (tareUg ?? 0)) + toAddUg
  const balance = balanceFor(state.header.balances, loadUg)
  const capacityUg = state.plan.vessels.get(vessel)?.capacityUg
  const roomUg = capacityUg === undefined ? null : Math.max(0, capacityUg - heldUg + lossUg)
  const proposedUg = shownOn(balance, toAddUg, roomUg)
  return {
    vessel,
    lossUg,
    aboveUg,
    possible,
    toAddUg,
    proposedUg,
    roomUg,
    ...(balance === undefined ? {} : { balance }),
    ...(tareUg === undefined
      ? {}
      : { tareUg, grossUg: tareUg + heldUg, fullGrossUg: tareUg + heldUg - lossUg + proposedUg }),
  }
}

interface Asked {
  readonly vessel: string
  readonly line: string
  readonly grossUg: Micrograms | undefined
  readonly tareUg: Micrograms | undefined
}

function readLoss(
  state: BatchState,
  { vessel, line, grossUg, tareUg }: Asked,
): Pick<MakeUp, 'lossUg' | 'aboveUg' | 'possible'> {
  if (grossUg === undefined || tareUg === undefined) return { lossUg: 0, aboveUg: 0, possible: true }
  const reading = { grossUg, tareUg, uncertaintyUg: readingUncertaintyUg(state, grossUg), component: line }
  const { status, differenceUg, possible } = massBalanceReading(state.ledger, vessel, reading)
  return {
    lossUg: status === 'loss' ? differenceUg : 0,
    aboveUg: status === 'gain' ? -differenceUg : 0,
    possible,
  }
}

function shownOn(balance: Balance | undefined, massUg: Micrograms, roomUg: Micrograms | null): Micrograms {
  const stepUg = balance?.stepUg ?? 1
  const roundedUg = roundToStep(massUg, stepUg)
  return roomUg === null || roundedUg <= roomUg ? roundedUg : roundDownToStep(roomUg, stepUg)
}

/**
 * A gain is no loss to be made up: something was not written down, or the tare is wrong. What is passed is this gain;
 * another reading is asked about again.
 */
export const aboveTheory = (aboveUg: Micrograms, passable: boolean): Gate => ({
  code: 'ABOVE_THEORY',
  key: `ABOVE_THEORY:${aboveUg}`,
  passable,
  aboveUg,
})

/** The finest balance that can carry a load; the largest where none can. */
export function balanceFor(balances: readonly Balance[], loadUg: Micrograms): Balance | undefined {
  const byStep = [...balances].sort((a, b) => a.stepUg - b.stepUg)
  return byStep.find((balance) => balance.capacityUg >= loadUg) ?? byStep.at(-1)
}

/** Twice the standard uncertainty of two readings of that load. */
export function readingUncertaintyUg(state: BatchState, grossUg: Micrograms): Micrograms {
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
