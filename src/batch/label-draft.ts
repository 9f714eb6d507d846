import { compositionAsMade } from '../trade/composition'
import { allergensOf, type Contact, type Portion } from './allergens'
import type { Material } from './catalogue'
import type { Revision } from './formula'
import { fractionsOf } from './schemas/check-revision'
import type { BatchState } from './state'

/** An INCI name with its share of the product, 0–1. */
export interface LabelEntry {
  readonly name: string
  readonly fraction: number
  /** Named because it is an allergen in another ingredient: its mass is a part of that one's. */
  readonly allergen?: true
}

/**
 * The list of ingredients as Regulation (EC) 1223/2009, Article 19 (1) (g), orders it: falling to 1 %, what is at or
 * below in any order after it, colourants last. A draft: the responsible person decides.
 */
export interface LabelDraft {
  readonly above: readonly LabelEntry[]
  readonly upToOne: readonly LabelEntry[]
  readonly colourants: readonly LabelEntry[]
  /** Share of the product that has no INCI name: the list is not whole while it is above nothing. */
  readonly unnamed: number
  readonly unnamedMaterials: readonly string[]
  readonly allergensUnknown: readonly { readonly material: string; readonly names: readonly string[] }[]
}

const onePercent = 0.01
const nothing = 1e-9

/** From what a product is made of, each material with its share. */
export function labelOf(portions: readonly Portion[], contact: Contact): LabelDraft {
  const present = portions.filter(({ share }) => share > 0)
  const sums = new Map<string, LabelEntry>()
  for (const { material, share } of present) {
    for (const { name, fraction } of material.inci) {
      const key = keyOf(name)
      const before = sums.get(key)
      sums.set(key, { name: before?.name ?? nameOf(name), fraction: (before?.fraction ?? 0) + share * fraction })
    }
  }
  const { named, unknown } = allergensOf(present, contact)
  const allergens = named
    .filter(({ name }) => !sums.has(keyOf(name)))
    .map(({ name, fraction }): LabelEntry => ({ name, fraction, allergen: true }))
  const entries = [...sums.values()].filter(({ fraction }) => fraction > 0).sort(falling)
  const plain = entries.filter(({ name }) => !isColourant(name))
  const unlisted = present.filter(({ material }) => leftOut(material) > 0.005)
  return {
    above: plain.filter(({ fraction }) => fraction > onePercent + nothing),
    upToOne: [...plain.filter(({ fraction }) => fraction <= onePercent + nothing), ...allergens].sort(falling),
    colourants: entries.filter(({ name }) => isColourant(name)),
    unnamed: unlisted.reduce((sum, { material, share }) => sum + share * leftOut(material), 0),
    unnamedMaterials: [...new Set(unlisted.map(({ material }) => material.name))],
    allergensUnknown: unknown.map(({ material, names }) => ({ material: material.name, names })),
  }
}

/** As the label would have it: names only. */
export const labelText = ({ above, upToOne, colourants }: LabelDraft): string =>
  [...above, ...upToOne, ...colourants].map(({ name }) => name).join(', ')

/** What a revision states, adjusters as expected. Lines of unknown materials are left out. */
export function portionsOf(revision: Revision, materials: ReadonlyMap<string, Material>): readonly Portion[] {
  const lines = revision.phases.flatMap((phase) => phase.lines)
  const { qs } = fractionsOf(lines)
  return lines.flatMap(({ materialId, amount }) => {
    const material = materials.get(materialId)
    if (!material) return []
    const share =
      amount.kind === 'fraction' ? amount.fraction : amount.kind === 'as-needed' ? amount.expected : (qs ?? 0)
    return [{ material, share }]
  })
}

/** What a batch was made of, by its ledger: losses are out, and what was added unplanned is in. */
export function portionsAsMade(state: BatchState, materials: ReadonlyMap<string, Material>): readonly Portion[] {
  return [...compositionAsMade(state.ledger)].map(([component, share]) => {
    const planned = state.plan.lines.get(component)?.material
    const body = state.unplanned.get(component)?.body
    const known = planned ?? materials.get(body?.materialId ?? '')
    return { material: known ?? { id: component, name: body?.name ?? component, inci: [], function: '' }, share }
  })
}

const isColourant = (name: string): boolean => /^ci ?\d{5}\b/i.test(name.trim())

/** Water goes by three names. */
const keyOf = (name: string): string => {
  const key = name.trim().toLowerCase()
  return /^(aqua|water|eau|aqua \/ water|aqua\/water|aqua \(water\)|aqua\/water\/eau)$/.test(key) ? 'aqua' : key
}

const nameOf = (name: string): string => (keyOf(name) === 'aqua' ? 'Aqua' : name.trim())

const leftOut = ({ inci }: Material): number => 1 - inci.reduce((sum, { fraction }) => sum + fraction, 0)

const falling = (a: LabelEntry, b: LabelEntry): number => b.fraction - a.fraction || a.name.localeCompare(b.name)
