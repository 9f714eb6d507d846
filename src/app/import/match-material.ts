import type { Material } from '../../batch/catalogue'
import { synonymGroups } from './synonyms'

/** What of the house a line of a sheet may be. Only the same bench name is taken without asking. */
export type Match =
  | { readonly kind: 'here'; readonly material: Material }
  | { readonly kind: 'near'; readonly candidates: readonly Near[] }
  | { readonly kind: 'new' }

export interface Near {
  readonly material: Material
  /** Another name of the same substance, or a name that is nearly spelled the same. */
  readonly why: 'same-substance' | 'spelling'
}

interface Named {
  readonly name: string
  readonly inci: string
}

/** The materials of the house, made ready to be compared with: worked out once for any number of lines. */
export type MaterialIndex = readonly {
  readonly material: Material
  readonly plain: string
  readonly keys: ReadonlySet<string>
  readonly strength: string
}[]

export const indexOf = (materials: readonly Material[]): MaterialIndex =>
  materials.map((material) => ({
    material,
    plain: plainName(material.name),
    keys: keysOf(material),
    strength: strengthOf(material.name),
  }))

/**
 * The materials that a line may be. Names that say different strengths (lactic acid 10 % and 80 %) are never offered for
 * one another.
 */
export function matchMaterial(line: Named, index: MaterialIndex): Match {
  const plain = plainName(line.name)
  const here = index.find((each) => each.plain === plain)
  if (here) return { kind: 'here', material: here.material }
  const keys = [...substancesOf(line.name), ...substancesOf(line.inci)]
  const strength = strengthOf(line.name)
  const scored = index
    .filter((each) => strength === '' || each.strength === '' || each.strength === strength)
    .flatMap((each): (Near & { readonly off: number })[] => {
      const { material } = each
      const off = distance(plain, each.plain)
      if (keys.some((key) => each.keys.has(key))) return [{ material, why: 'same-substance', off }]
      return off <= allowed(plain) ? [{ material, why: 'spelling', off }] : []
    })
    .toSorted((a, b) => a.why.localeCompare(b.why) || a.off - b.off)
  return scored.length === 0
    ? { kind: 'new' }
    : { kind: 'near', candidates: scored.slice(0, 4).map(({ material, why }) => ({ material, why })) }
}

/** Without accents, case, punctuation and blanks beside one another: what makes two names the same name. */
export const plainName = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/[^\p{L}\p{N}.%]+/gu, ' ')
    .replace(/ %/g, '%')
    .trim()

/** Words in any order, so that "water, purified" is "purified water". */
const wordKey = (text: string): string => plainName(text).split(' ').sort().join(' ')

const canonical: ReadonlyMap<string, string> = new Map(
  synonymGroups.flatMap((names) => names.map((name) => [wordKey(name), wordKey(names[0] ?? name)] as const)),
)

const substance = (text: string): string => canonical.get(wordKey(text)) ?? wordKey(text)

/** The substances that a text names: itself, its parts in brackets, and of "Aqua/Water/Eau" each one. */
function substancesOf(text: string): string[] {
  const bare = text.replace(/\b\d+(?:[.,]\d+)?\s*%(?:\s*(?:solution|sol\.?|active))?/gi, ' ')
  const inside = [...bare.matchAll(/\(([^)]*)\)/g)].map(([, part = '']) => part).filter((part) => part !== 'and')
  const outside = bare.replace(/\((?!and\))[^)]*\)/g, ' ')
  const whole = [bare, outside, ...inside, ...(outside.split('/').length > 1 ? outside.split('/') : [])]
  return [...whole.map(substance), blendOf(outside.split(/[,;+]|\(and\)|\band\b|&/))].filter((key) => key.length > 1)
}

/** A material is its name, its single constituent, or the blend of its constituents. */
const keysOf = ({ name, inci }: Material): Set<string> =>
  new Set([...substancesOf(name), blendOf(inci.map((part) => part.name))].filter((key) => key.length > 1))

/** Constituents in any order; the water of a solution does not tell it apart. */
function blendOf(names: readonly string[]): string {
  const parts = names.map(substance).filter((key) => key !== '')
  const dry = parts.filter((key) => key !== 'aqua')
  return (dry.length === 0 ? parts : dry).sort().join(' + ')
}

/** The figures of a name, in any order; empty where it says none. */
const strengthOf = (text: string): string => (plainName(text).match(/\d+(?:\.\d+)?/g) ?? []).map(Number).sort().join()

/** How many letters may be off: none in a short name. */
const allowed = (text: string): number => (text.length >= 8 ? 2 : text.length >= 5 ? 1 : 0)

/** More letters than this off is another name, however many there are. */
const farthest = 2
const far = farthest + 1

/** Letters to add, take out, change or swap with the next (optimal string alignment), as far as is looked for. */
function distance(one: string, other: string): number {
  if (Math.abs(one.length - other.length) > farthest) return far
  let before: number[] = []
  let last = Array.from({ length: other.length + 1 }, (_, at) => at)
  for (let i = 1; i <= one.length; i += 1) {
    const row: number[] = [i]
    // Only near the diagonal can a name still be near enough.
    for (let j = Math.max(1, i - farthest); j <= Math.min(other.length, i + farthest); j += 1) {
      const change = one[i - 1] === other[j - 1] ? 0 : 1
      const isSwap = one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]
      const swap = isSwap ? (before[j - 2] ?? far) + 1 : far
      row[j] = Math.min((last[j] ?? far) + 1, (row[j - 1] ?? far) + 1, (last[j - 1] ?? far) + change, swap)
    }
    if (row.every((letters) => letters > farthest)) return far
    before = last
    last = row
  }
  return last[other.length] ?? far
}
