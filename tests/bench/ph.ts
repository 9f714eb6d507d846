/**
 * `npm run bench:ph`: how well the pH adviser does on simulated batches, beside a plain secant and fixed steps. Prints
 * one JSON object. `PH_SEED` is the first seed (1), `PH_COUNT` how many batches (1000), `PH_SIM` the path of another
 * simulator that exports makeBatch(seed), runBatch(batch, adviser, { seed }) and, for a second batch of a formula,
 * sibling(batch, seed).
 */
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { fixedSteps, learntFrom, ours, secant } from './ph/advisers.ts'
import * as ownSimulator from './ph/batch.ts'
import { quantile } from './statistics.ts'

type Simulator = Pick<typeof ownSimulator, 'makeBatch' | 'runBatch'> & Partial<Pick<typeof ownSimulator, 'sibling'>>
type Batch = ReturnType<Simulator['makeBatch']>
type Outcome = ReturnType<Simulator['runBatch']>

const { PH_SIM: path, PH_SEED = '1', PH_COUNT = '1000' } = process.env
const simulator: Simulator =
  path === undefined || path === ''
    ? ownSimulator
    : ((await import(pathToFileURL(resolve(path)).href)) as typeof ownSimulator)
const first = wholeOf('PH_SEED', PH_SEED)
const seeds = Array.from({ length: wholeOf('PH_COUNT', PH_COUNT) }, (_, index) => first + index)
const batches = seeds.map((seed) => simulator.makeBatch(seed))

console.log(
  JSON.stringify({
    adviser: figuresOf(batches.map((batch) => simulator.runBatch(batch, ours()))),
    withHistory: figuresOf(batches.map(secondOfItsFormula)),
    secant: figuresOf(batches.map((batch) => simulator.runBatch(batch, secant))),
    fixedSteps: figuresOf(batches.map((batch) => simulator.runBatch(batch, fixedSteps))),
  }),
)

/** The next batch of the formula, once one has been brought to its pH. */
function secondOfItsFormula(batch: Batch): Outcome {
  const { history } = simulator.runBatch(batch, ours(), { seed: 2 })
  const next = simulator.sibling?.(batch, batch.seed) ?? batch
  return simulator.runBatch(next, ours(learntFrom({ ...batch, history })), { seed: 3 })
}

/** Shares 0–1; additions. */
function figuresOf(outcomes: readonly Outcome[]) {
  const share = (which: (outcome: Outcome) => boolean) => outcomes.filter(which).length / outcomes.length
  const additions = outcomes.map(({ adds }) => adds)
  return {
    inWindow: share(({ inWindow }) => inWindow),
    overshoot: share(({ over }) => over),
    median: quantile(additions, 0.5),
    p90: quantile(additions, 0.9),
  }
}

function wholeOf(name: string, text: string): number {
  const value = Number(text)
  if (!Number.isSafeInteger(value) || value < 0) throw new Error(`${name} is a whole number, not ${text}`)
  return value
}
