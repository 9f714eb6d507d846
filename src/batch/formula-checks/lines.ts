import type { Material } from '../catalogue'
import type { Line, Revision } from '../formula'
import { fractionsOf } from '../schemas/check-revision'
import type { CheckContext } from './check'
import { type Walked, walkOf } from './walk'

/** A line with its material and what it comes to in the finished product. */
export interface CheckedLine {
  readonly line: Line
  readonly phase: string
  readonly material: Material
  /** Expected share of the finished product; never below zero. */
  readonly share: number
  /** The most that the formula lets it come to. */
  readonly most: number
}

/** A revision made ready to be looked at: lines without a known material are left out of `lines`. */
export interface Checked {
  readonly revision: Revision
  readonly contact: 'rinse-off' | 'leave-on'
  readonly lines: readonly CheckedLine[]
  readonly unknown: readonly Line[]
  readonly byId: ReadonlyMap<string, CheckedLine>
  /** Lines of one material taken together, in the order of the formula. */
  readonly byMaterial: ReadonlyMap<string, readonly CheckedLine[]>
  /** The procedure, step by step. */
  readonly walk: readonly Walked[]
  readonly context: CheckContext
  readonly sizeUg: number
}

export function checkedOf(
  revision: Revision,
  contact: Checked['contact'],
  materials: ReadonlyMap<string, Material>,
  context: CheckContext,
): Checked {
  const { qs } = fractionsOf(revision.phases.flatMap(({ lines }) => lines))
  const lines: CheckedLine[] = []
  const unknown: Line[] = []
  const byMaterial = new Map<string, CheckedLine[]>()
  for (const phase of revision.phases) {
    for (const line of phase.lines) {
      const material = materials.get(line.materialId)
      if (!material) {
        unknown.push(line)
        continue
      }
      const checked = { line, phase: phase.letter, material, ...amountsOf(line, Math.max(0, qs ?? 0)) }
      lines.push(checked)
      const same = byMaterial.get(material.id)
      if (same) same.push(checked)
      else byMaterial.set(material.id, [checked])
    }
  }
  const byId = new Map(lines.map((each) => [each.line.id, each]))
  return {
    revision,
    contact,
    lines,
    unknown,
    byMaterial,
    context,
    byId,
    walk: walkOf(revision, byId),
    sizeUg: context.sizeUg ?? revision.usualSizeUg,
  }
}

export const shareOf = (lines: readonly CheckedLine[]): number => lines.reduce((sum, { share }) => sum + share, 0)

/** Binary fractions that were summed are off by a last digit; anything more was typed. */
export const tidy = (value: number): number => Number(value.toFixed(12))

function amountsOf({ amount, range }: Line, qs: number): Pick<CheckedLine, 'share' | 'most'> {
  switch (amount.kind) {
    case 'fraction':
      return { share: amount.fraction, most: range?.max ?? amount.fraction }
    case 'as-needed':
      return { share: amount.expected, most: amount.max }
    case 'qs':
      return { share: qs, most: qs }
  }
}
