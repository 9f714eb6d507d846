/** An acid or base that takes up or gives off protons, by its macroscopic pKas at 25 °C, lowest first. */
export interface Species {
  /** Charge of one molecule with every proton on. */
  readonly fullCharge: number
  readonly pKas: readonly number[]
}

/** The ionic product of water at 25 °C, (mol/kg)². */
const ionicProduct = 1e-14

/**
 * Mean charge of one molecule at a pH: z0 − Σ k·βk ÷ Σ βk, where βk = 10^(k·pH − pK1 − … − pKk) is the share that has
 * given off k protons.
 */
export function meanCharge({ fullCharge, pKas }: Species, ph: number): number {
  let share = 1
  let all = 1
  let protonsGiven = 0
  for (const [index, pKa] of pKas.entries()) {
    share *= 10 ** (ph - pKa)
    all += share
    protonsGiven += (index + 1) * share
  }
  return fullCharge - protonsGiven / all
}

/** Charge of the protons and hydroxide of water, in mol, in a mass of water. Activities are taken as concentrations. */
export function waterCharge(waterKg: number, ph: number): number {
  const protons = 10 ** -ph
  return waterKg * (protons - ionicProduct / protons)
}
