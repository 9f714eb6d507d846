/**
 * The exact pH of a mixture by its charge balance, at 25 °C and with concentrations for activities. It shares no code
 * with the adviser that it tests.
 */

/** An acid or base by its macroscopic pKas and the charge of its fully protonated form, or a polymer's spread of pKas. */
export type Species = { readonly z0: number; readonly pKas: readonly number[] } | { readonly dist: readonly number[] }

export interface Buffer {
  readonly name: string
  readonly sp: Species
  /** In the whole batch. */
  readonly mol: number
}

/** `sid` is the charge of its strong ions per mole; `wTrue` its mass fraction in the bottle, the rest being water. */
export interface Adjuster {
  readonly name: string
  readonly wTrue: number
  readonly mw: number
  readonly sp: Species | null
  readonly sid: number
}

export interface Mixture {
  /** g, of which `waterFraction` is water. */
  readonly mass: number
  readonly waterFraction: number
  /** Strong ions of the batch: mol of charge that no pH changes. */
  readonly sidMol: number
  readonly buffers: readonly Buffer[]
  readonly adjuster: Adjuster
}

const ionicProduct = 1e-14
const lowestPh = -1
const highestPh = 15

/** The pH at which all charges cancel, with so many grams of adjuster in. The charge only falls as the pH rises. */
export function phOf(mixture: Mixture, grams: number): number {
  let [low, high] = [lowestPh, highestPh]
  for (let halving = 0; halving < 50; halving += 1) {
    const middle = (low + high) / 2
    if (charge(mixture, grams, middle) > 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Grams of adjuster that bring the mixture to a pH: at one pH the charge is linear in them. Infinite where none do. */
export function gramsTo(mixture: Mixture, ph: number): number {
  const without = charge(mixture, 0, ph)
  const perGram = charge(mixture, 1, ph) - without
  const grams = -without / perGram
  return grams >= 0 ? grams : Number.POSITIVE_INFINITY
}

/** The strong ions that put a mixture without adjuster at a pH. */
export const strongIonsFor = (mixture: Mixture, ph: number): number => mixture.sidMol - charge(mixture, 0, ph)

function charge({ mass, waterFraction, sidMol, buffers, adjuster }: Mixture, grams: number, ph: number): number {
  const waterKg = (mass * waterFraction + grams * (1 - adjuster.wTrue)) / 1000
  const protons = 10 ** -ph
  const adjusterMol = (grams * adjuster.wTrue) / adjuster.mw
  const ofAdjuster = adjuster.sid + (adjuster.sp === null ? 0 : chargeOf(adjuster.sp, protons))
  return (
    sidMol +
    waterKg * (protons - ionicProduct / protons) +
    buffers.reduce((sum, { sp, mol }) => sum + mol * chargeOf(sp, protons), 0) +
    adjusterMol * ofAdjuster
  )
}

function chargeOf(species: Species, protons: number): number {
  if ('dist' in species) return -mean(species.dist.map((pKa) => shareOff(pKa, protons)))
  return species.z0 - protonsOff(species.pKas, protons)
}

/** Share of a group that has given off its proton: Ka ÷ (Ka + [H]). */
const shareOff = (pKa: number, protons: number): number => 1 / (1 + protons * 10 ** pKa)

/** Mean number of protons given off, from the last form back to the first so that nothing grows too large. */
function protonsOff(pKas: readonly number[], protons: number): number {
  const ratios = pKas.map((pKa) => 10 ** -pKa / protons)
  let [all, weighted] = [1, 0]
  for (const ratio of ratios.toReversed()) {
    weighted = ratio * (weighted + all)
    all = 1 + ratio * all
  }
  return weighted / all
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
