import { type Micrograms, roundUpToStep } from '../trade/mass'
import { relativeTolerance } from '../trade/relative-tolerance'
import { smallestReliableMass } from '../trade/reliability'
import type { Material } from './catalogue'
import type { PlannedLine } from './plan'

/** How a dilution is made and weighed; masses stand on the balance's steps. */
export interface PremixRecipe {
  readonly line: string
  readonly into: string
  readonly oneIn: number
  /** Weighed to make it: the small one, and what it is diluted with. */
  readonly neatUg: Micrograms
  readonly thinnerUg: Micrograms
  /** Of the dilution, into the batch. */
  readonly doseUg: Micrograms
  /** Of the other line, beside what the dilution brings. */
  readonly carrierLeftUg: Micrograms
}

/** Dilutions that are easily weighed out; the weakest that serves is enough. */
const dilutions = [10, 20, 50, 100] as const

/** A tenth more than goes in: a cup and a spatula keep some of it. Eleven tenths, since binary 1.1 is a little more. */
const withSpare = (massUg: number): number => (massUg * 11) / 10

/**
 * Every way to dilute one line of a plan so that its balance weighs it well: in the q.s. line of its phase first, then
 * in the liquids of its phase by what there is of them. `goodFromUg`: what its balance weighs well.
 */
export function premixesFor(
  planned: PlannedLine,
  lines: readonly PlannedLine[],
  goodFromUg: number,
): readonly PremixRecipe[] {
  const carriers = lines
    .filter((other) => other !== planned && other.phase === planned.phase && canCarry(other))
    .sort((a, b) => Number(isQs(b)) - Number(isQs(a)) || b.targetUg - a.targetUg)
  return carriers.flatMap((carrier) => {
    const fit = dilutions.filter((oneIn) => {
      const doseUg = planned.targetUg * oneIn
      return doseUg >= goodFromUg && doseUg - planned.targetUg < carrier.targetUg
    })
    return fit.map((oneIn) => recipeOf(planned, carrier, oneIn, goodFromUg))
  })
}

/** What is weighed to make the dilution that a planned line is weighed as. */
export function dilutionOf(
  { targetUg, line, balance }: PlannedLine,
  oneIn: number,
): { readonly neatUg: Micrograms; readonly thinnerUg: Micrograms } {
  const neatTargetUg = targetUg / oneIn
  const tolerance = relativeTolerance(targetUg, line.tolerance)
  return made(neatTargetUg, smallestReliableMass(balance, tolerance, false).blocksBelow, oneIn, balance.stepUg)
}

function recipeOf(planned: PlannedLine, carrier: PlannedLine, oneIn: number, goodFromUg: number): PremixRecipe {
  const doseUg = planned.targetUg * oneIn
  return {
    line: planned.line.id,
    into: carrier.line.id,
    oneIn,
    ...made(planned.targetUg, goodFromUg, oneIn, planned.balance.stepUg),
    doseUg,
    carrierLeftUg: carrier.targetUg - (doseUg - planned.targetUg),
  }
}

function made(targetUg: number, goodFromUg: number, oneIn: number, stepUg: Micrograms) {
  const neatUg = roundUpToStep(roundFigure(Math.max(goodFromUg, withSpare(targetUg))), stepUg)
  return { neatUg, thinnerUg: neatUg * (oneIn - 1) }
}

/** What dissolves is liquid; a preservative or washing active keeps to its own line. */
function canCarry({ line, material, targetUg }: PlannedLine): boolean {
  if (targetUg <= 0 || line.amount.kind === 'as-needed') return false
  return isLiquid(material) && !/preserv|fragrance|surfactant/.test(material.function.toLowerCase())
}

const isLiquid = ({ form }: Material): boolean => form === undefined || form === 'liquid' || form === 'solution'

const isQs = ({ line }: PlannedLine): boolean => line.amount.kind === 'qs'

/** Two figures, upward. */
function roundFigure(massUg: number): number {
  const figure = 10 ** Math.max(Math.floor(Math.log10(massUg)) - 1, 0)
  return Math.ceil(massUg / figure) * figure
}
