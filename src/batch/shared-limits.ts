import type { Lot, Material } from './catalogue'
import type { Line, SharedLimit } from './formula'

/**
 * How much of a material counts for a limit over several lines, as a fraction of its mass. Active matter is that of the
 * lot, where its assay is known.
 */
export function countsFor(
  { inci, activeMatter, function: does }: Material,
  of: SharedLimit['of'],
  assay?: number,
): number {
  switch (of.kind) {
    case 'inci':
      return inci.reduce((sum, part) => (sameWords(part.name, of.name) ? sum + part.fraction : sum), 0)
    case 'active':
      return activeMatter?.class === of.class ? (assay ?? activeMatter.fraction) : 0
    case 'function':
      return sameWords(does, of.function) ? 1 : 0
  }
}

/** Which lines a limit is over: "all lines that hold phenoxyethanol". */
export function overWhat({ of }: SharedLimit): string {
  switch (of.kind) {
    case 'inci':
      return `all lines that hold ${of.name.toLowerCase()}`
    case 'active':
      return `${of.class} active matter of all lines`
    case 'function':
      return `all lines that are ${of.function.toLowerCase()}`
  }
}

/** A line with the share that the formula gives it: of an adjuster what is expected, of q.s. what is left. */
export interface SharedLine {
  readonly line: Line
  readonly fraction: number
  readonly material: Material
  /** In the order of their use. */
  readonly lots?: readonly Lot[]
}

/** The assay that a line's mass is reckoned with: of its first lot, where the formula asks for it. */
export const assayOf = ({ line, lots }: Pick<SharedLine, 'line' | 'lots'>): number | undefined =>
  line.assayAssumed === undefined ? undefined : lots?.[0]?.assay

/** What a limit over several lines comes to in the formula as it is written. */
export const plannedShare = ({ of }: SharedLimit, lines: readonly SharedLine[]): number =>
  lines.reduce((sum, each) => sum + each.fraction * countsFor(each.material, of, assayOf(each)), 0)

const sameWords = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase()
