import type { InciPart, Material } from './catalogue'

/** A share of the finished product, 0–1, of one material. */
export interface Portion {
  readonly material: Material
  readonly share: number
}

export interface Allergens {
  /** Above the limit by what is known of them; name as its material writes it, fraction of the finished product. */
  readonly named: readonly InciPart[]
  /** Materials that hold allergens in amounts that nobody wrote down, and enough of the material to matter. */
  readonly unknown: readonly {
    readonly material: Material
    readonly share: number
    readonly names: readonly string[]
  }[]
}

export type Contact = 'rinse-off' | 'leave-on'

/** Above these a fragrance allergen is named on the label: Regulation (EC) 1223/2009, Annex III. */
export const allergenLimit: Readonly<Record<Contact, number>> = { 'leave-on': 0.00001, 'rinse-off': 0.0001 }

/** The fragrance allergens of Annex III that had to be named before 2023, without those since forbidden. */
const wellKnown = new Set(
  [
    'Alpha-Isomethyl Ionone, Amyl Cinnamal, Amylcinnamyl Alcohol, Anise Alcohol, Benzyl Alcohol, Benzyl Benzoate',
    'Benzyl Cinnamate, Benzyl Salicylate, Cinnamal, Cinnamyl Alcohol, Citral, Citronellol, Coumarin, Eugenol',
    'Evernia Furfuracea Extract, Evernia Prunastri Extract, Farnesol, Geraniol, Hexyl Cinnamal, Hydroxycitronellal',
    'Isoeugenol, Limonene, Linalool, Methyl 2-Octynoate',
  ].flatMap((names) => names.split(', ').map((name) => name.toLowerCase())),
)

/** Which allergens are to be named: what is known is summed by name, what is not known is said so. */
export function allergensOf(portions: readonly Portion[], contact: Contact): Allergens {
  const limit = allergenLimit[contact]
  const sums = new Map<string, { name: string; fraction: number }>()
  for (const { material, share } of portions)
    for (const { name, fraction } of knownParts(material)) {
      const sum = sums.get(name.toLowerCase()) ?? { name, fraction: 0 }
      sum.fraction += share * fraction
      sums.set(name.toLowerCase(), sum)
    }
  const named = [...sums.values()].filter(({ fraction }) => fraction > limit).sort((a, b) => b.fraction - a.fraction)
  const isNamed = (name: string) => named.some((each) => each.name.toLowerCase() === name.toLowerCase())
  const unknown = byMaterial(portions).flatMap(({ material, share }) => {
    const parts = new Set(knownParts(material).map(({ name }) => name.toLowerCase()))
    const names = (material.allergens ?? []).filter((name) => !parts.has(name.toLowerCase()) && !isNamed(name))
    return names.length > 0 && share > limit ? [{ material, share, names }] : []
  })
  return { named, unknown }
}

/** By its supplier's sheet; else where an allergen is one of its own constituents. */
function knownParts({ inci, allergens, allergenParts = [] }: Material): readonly InciPart[] {
  const stated = new Set(allergenParts.map(({ name }) => name.toLowerCase()))
  const listed = new Set((allergens ?? []).map((name) => name.toLowerCase()))
  const own = inci.filter(({ name }) => {
    const key = name.trim().toLowerCase()
    return !stated.has(key) && (wellKnown.has(key) || listed.has(key))
  })
  return [...allergenParts, ...own]
}

function byMaterial(portions: readonly Portion[]): readonly Portion[] {
  const shares = new Map<Material, number>()
  for (const { material, share } of portions) shares.set(material, (shares.get(material) ?? 0) + share)
  return [...shares].map(([material, share]) => ({ material, share }))
}
