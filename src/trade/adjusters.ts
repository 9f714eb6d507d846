import { meanCharge, type Species } from './charge'
import { accept, type Result, refuse } from './result'

/** What a pH adjuster is made of. */
export interface AdjusterChemistry {
  readonly kind: 'acid' | 'base'
  /** g/mol, free of water. */
  readonly molarMass: number
  /** Its acid and base groups; absent for a strong acid or base. */
  readonly species?: Species
  /** Charge that a molecule always carries into the balance: +1 for the sodium of sodium hydroxide. */
  readonly strongCharge: number
}

/** An adjuster as it stands in its bottle: strength is the mass fraction of acid or base in it. */
export interface Adjuster extends AdjusterChemistry {
  readonly strength: number
}

export type AdjusterRefusal =
  | { readonly code: 'ADJUSTER_UNKNOWN' }
  | { readonly code: 'ADJUSTER_WITHOUT_STRENGTH' }
  | { readonly code: 'ADJUSTER_MIXED'; readonly names: readonly string[] }

/** Charge that one mole of the adjuster brings, at a pH. */
export const chargePerMole = ({ species, strongCharge }: AdjusterChemistry, ph: number): number =>
  strongCharge + (species === undefined ? 0 : meanCharge(species, ph))

/**
 * The adjuster that a material is, by the INCI names of what is in it, with its strength: `assay` (0–1) where a lot
 * states one, else the part that the material states. Nothing is guessed: a solution that does not say how strong it is
 * has no strength, and a material of two adjusters is none.
 */
export function adjusterOf(
  parts: readonly { readonly name: string; readonly fraction: number }[],
  { assay, dissolved = false }: { readonly assay?: number | undefined; readonly dissolved?: boolean } = {},
): Result<Adjuster, AdjusterRefusal> {
  const known = parts.flatMap(({ name, fraction }) => {
    const chemistry = chemistryByInci.get(nameKey(name))
    return chemistry === undefined ? [] : [{ name, fraction, chemistry }]
  })
  const [only, ...others] = known
  if (only === undefined) return refuse({ code: 'ADJUSTER_UNKNOWN' })
  if (others.length > 0) return refuse({ code: 'ADJUSTER_MIXED', names: known.map(({ name }) => name) })
  const stated = dissolved && only.fraction >= 1 ? undefined : only.fraction
  const strength = assay ?? stated
  if (strength === undefined || !(strength > 0 && strength <= 1)) return refuse({ code: 'ADJUSTER_WITHOUT_STRENGTH' })
  return accept({ ...only.chemistry, strength })
}

const nameKey = (inci: string): string => inci.trim().toLowerCase()

const weakAcid = (molarMass: number, ...pKas: readonly number[]): AdjusterChemistry => ({
  kind: 'acid',
  molarMass,
  species: { fullCharge: 0, pKas },
  strongCharge: 0,
})

const weakBase = (molarMass: number, fullCharge: number, ...pKas: readonly number[]): AdjusterChemistry => ({
  kind: 'base',
  molarMass,
  species: { fullCharge, pKas },
  strongCharge: 0,
})

/**
 * Adjusters that cosmetics use, by INCI name. pKas at 25 °C and no ionic strength from the tables of the CRC Handbook of
 * Chemistry and Physics ("Dissociation constants of organic acids and bases", "… of inorganic acids and bases");
 * arginine as general chemistry and biochemistry textbooks give it. Lactones, which turn acid over hours, are left out:
 * a reading soon after them says nothing.
 */
const chemistryByInci: ReadonlyMap<string, AdjusterChemistry> = new Map([
  ['citric acid', weakAcid(192.12, 3.13, 4.76, 6.4)],
  ['lactic acid', weakAcid(90.08, 3.86)],
  ['glycolic acid', weakAcid(76.05, 3.83)],
  ['malic acid', weakAcid(134.09, 3.4, 5.11)],
  ['tartaric acid', weakAcid(150.09, 2.98, 4.34)],
  ['succinic acid', weakAcid(118.09, 4.21, 5.64)],
  ['acetic acid', weakAcid(60.05, 4.76)],
  ['phosphoric acid', weakAcid(98, 2.15, 7.2, 12.35)],
  ['hydrochloric acid', { kind: 'acid', molarMass: 36.46, strongCharge: -1 }],
  ['sodium hydroxide', { kind: 'base', molarMass: 40, strongCharge: 1 }],
  ['potassium hydroxide', { kind: 'base', molarMass: 56.11, strongCharge: 1 }],
  ['triethanolamine', weakBase(149.19, 1, 7.76)],
  ['aminomethyl propanol', weakBase(89.14, 1, 9.69)],
  ['tromethamine', weakBase(121.14, 1, 8.07)],
  ['arginine', weakBase(174.2, 2, 2.17, 9.04, 12.48)],
])
