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

/**
 * The materials that a line may be. Names that say different strengths (lactic acid 10 % and 80 %) are never offered for
 * one another.
 */
export function matchMaterial(line: Named, materials: readonly Material[]): Match {
  const plain = plainName(line.name)
  const here = materials.find(({ name }) => plainName(name) === plain)
  if (here) return { kind: 'here', material: here }
  const keys = new Set([...substancesOf(line.name), ...substancesOf(line.inci)])
  const scored = materials
    .filter(({ name }) => !saysOtherStrength(line.name, name))
    .flatMap((material): (Near & { readonly far: number })[] => {
      const far = distance(plain, plainName(material.name))
      if ([...keysOf(material)].some((key) => keys.has(key))) return [{ material, why: 'same-substance', far }]
      return far <= allowed(plain) ? [{ material, why: 'spelling', far }] : []
    })
    .toSorted((a, b) => a.why.localeCompare(b.why) || a.far - b.far)
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

function saysOtherStrength(one: string, other: string): boolean {
  const [a, b] = [one, other].map((text) => plainName(text).match(/\d+(?:\.\d+)?/g) ?? [])
  if (a === undefined || b === undefined || a.length === 0 || b.length === 0) return false
  return a.map(Number).sort().join() !== b.map(Number).sort().join()
}

/** How many letters may be off: none in a short name. */
const allowed = (text: string): number => (text.length >= 8 ? 2 : text.length >= 5 ? 1 : 0)

/** Letters to add, take out, change or swap with the next (optimal string alignment). */
function distance(one: string, other: string): number {
  if (Math.abs(one.length - other.length) > 2) return 99
  const rows: number[][] = [Array.from({ length: other.length + 1 }, (_, at) => at)]
  const at = (i: number, j: number): number => rows[i]?.[j] ?? 99
  for (let i = 1; i <= one.length; i += 1) {
    rows[i] = [i]
    for (let j = 1; j <= other.length; j += 1) {
      const change = one[i - 1] === other[j - 1] ? 0 : 1
      const swap = one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1] ? at(i - 2, j - 2) + 1 : 99
      rows[i]?.push(Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + change, swap))
    }
  }
  return at(one.length, other.length)
}
