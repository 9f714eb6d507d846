import type { Material } from '../catalogue'

/**
 * What a material is, told by its INCI names where its own data does not say. The lists hold what the common textbooks
 * of the trade treat as such; a name that is not here is simply not known, and nothing is said about it.
 */
export type Trait = keyof typeof traits

const traits = {
  water: /^(aqua|water|eau)$/,
  carbomer: /carbomer|^acrylates\/c10-30 alkyl acrylate crosspolymer$/,
  gum: /(^| )gum$|^(hydroxyethyl|hydroxypropyl|hydroxypropyl methyl|methyl|sodium carboxymethyl )cellulose$|cellulose gum|^algin$|carrageenan|^agar$|^gellan|^pectin$|^hydroxypropyl (guar|starch)|hydroxypropyltrimonium chloride$|^microcrystalline cellulose$/,
  anionicThickener: /carbomer|acrylates|^xanthan gum$|^cellulose gum$|^algin$|carrageenan|^gellan/,
  cationicSurfactant:
    /(?<!hydroxypropyl)trimonium (chloride|methosulfate|bromide)|dimonium (chloride|methosulfate)|alkonium chloride$|^cetylpyridinium/,
  cationicPolymer: /^polyquaternium-|(guar|inulin|cellulose|starch) hydroxypropyltrimonium chloride|^chitosan/,
  anionic:
    /^(sodium|ammonium|potassium|tea|disodium|magnesium)[ -].*(sulfate|sulfosuccinate|sarcosinate|taurate|isethionate|glutamate|glycinate|alaninate|sulfonate|sulfoacetate)$/,
  electrolyte:
    /^(sodium|potassium|magnesium|calcium|ammonium) (chloride|sulfate|citrate|lactate|pca|phosphate|gluconate|phytate|benzoate|sorbate)$|^(potassium sorbate|zinc pca|zinc sulfate|aluminum chlorohydrate)$|^(di|tri|tetra)sodium (edta|phosphate|glutamate diacetate|ethylenediamine disuccinate)$/,
  base: /^(sodium|potassium|ammonium) hydroxide$|^(triethanolamine|aminomethyl propanol|tromethamine|arginine|tetrahydroxypropyl ethylenediamine)$/,
  film: /^(pvp|vp\/.*|polyvinylpyrrolidone)$/,
  preservative:
    /^(phenoxyethanol|benzyl alcohol|dehydroacetic acid|sodium dehydroacetate|benzoic acid|sodium benzoate|sorbic acid|potassium sorbate|salicylic acid|sodium salicylate|chlorphenesin|chlorhexidine digluconate|dmdm hydantoin|imidazolidinyl urea|(methyl|ethyl|propyl|butyl)paraben|o-cymen-5-ol|caprylhydroxamic acid)$/,
} as const satisfies Readonly<Record<string, RegExp>>

/** Sulfates of metals are salts, not washing matter. */
const salts = /^(sodium|potassium|magnesium|ammonium) sulfate$/

/** Reading names is the dear part of a check, and a catalogue asks for the same names again and again. */
const known = new WeakMap<Material, Map<Trait, number>>()

/** The fraction of a material that is of this kind, by its INCI names: 0 where none is. */
export function partOf(material: Material, trait: Trait): number {
  const ofMaterial = known.get(material) ?? new Map<Trait, number>()
  known.set(material, ofMaterial)
  const before = ofMaterial.get(trait)
  if (before !== undefined) return before
  const part = material.inci.reduce((sum, { name, fraction }) => (isNamed(name, trait) ? sum + fraction : sum), 0)
  ofMaterial.set(trait, part)
  return part
}

export const hasPart = (material: Material, trait: Trait): boolean => partOf(material, trait) > 0

/** Whether this is what its material is for: a word of the function it was given. */
export const isFor = (material: Material, word: string): boolean => material.function.toLowerCase().includes(word)

/** Below these the acid of the preservative stays undissociated enough to work; EU names, pH of the product. */
export const preservativePh: ReadonlyMap<string, { readonly min: number; readonly max: number }> = new Map([
  ['sodium benzoate', { min: 2, max: 5.5 }],
  ['benzoic acid', { min: 2, max: 5.5 }],
  ['potassium sorbate', { min: 2, max: 6 }],
  ['sorbic acid', { min: 2, max: 6 }],
  ['dehydroacetic acid', { min: 2, max: 6 }],
  ['sodium dehydroacetate', { min: 2, max: 6 }],
  ['salicylic acid', { min: 2, max: 4.5 }],
])

export interface LegalLimit {
  /** The preservatives that share the limit, with how much of the acid one part of them is. */
  readonly parts: ReadonlyMap<string, number>
  readonly name: string
  readonly asAcid: boolean
  readonly leaveOn: number
  readonly rinseOff: number
}

/** Regulation (EC) 1223/2009, Annex V, as of its entries 1, 3, 4, 13, 29 and 34; molar masses for salts as their acid. */
export const legalLimits: readonly LegalLimit[] = [
  limit('Phenoxyethanol', { phenoxyethanol: 1 }, 0.01, 0.01),
  limit('Benzyl Alcohol', { 'benzyl alcohol': 1 }, 0.01, 0.01),
  limit('Benzoic acid', { 'benzoic acid': 1, 'sodium benzoate': 122.12 / 144.1 }, 0.005, 0.025),
  limit('Sorbic acid', { 'sorbic acid': 1, 'potassium sorbate': 112.13 / 150.22 }, 0.006, 0.006),
  limit('Dehydroacetic acid', { 'dehydroacetic acid': 1, 'sodium dehydroacetate': 168.15 / 190.13 }, 0.006, 0.006),
  limit('Salicylic acid', { 'salicylic acid': 1 }, 0.005, 0.005),
]

function limit(name: string, parts: Record<string, number>, leaveOn: number, rinseOff: number): LegalLimit {
  return { name, parts: new Map(Object.entries(parts)), asAcid: Object.keys(parts).length > 1, leaveOn, rinseOff }
}

function isNamed(inci: string, trait: Trait): boolean {
  const name = inci.trim().toLowerCase()
  return traits[trait].test(name) && !(trait === 'anionic' && salts.test(name))
}
