import type { Material } from '../../batch/catalogue'
import type { BatchState } from '../../batch/state'
import type { KindOf } from '../../batch/step'
import { inSink } from '../../trade/ledger'
import type { Micrograms } from '../../trade/mass'

/** What the form of a rework offers: what this batch has, and what the store holds beside it. */
export interface ReworkChoices {
  readonly filledUg: Micrograms
  readonly vessels: readonly { readonly value: string; readonly label: string }[]
  readonly addable: readonly {
    readonly value: string
    readonly label: string
    readonly name: string
    readonly line?: string
    readonly materialId?: string
  }[]
  /** Adjustments that the formula knows, with their material and window. */
  readonly adjustments: readonly { readonly value: string; readonly label: string; readonly step: KindOf<'adjust'> }[]
  readonly checks: readonly { readonly value: string; readonly label: string }[]
  readonly tools: readonly string[]
}

export function reworkChoices(state: BatchState, materials: ReadonlyMap<string, Material>): ReworkChoices {
  const { plan, header } = state
  const steps = plan.steps.map(({ step }) => step)
  const lines = [...plan.lines.values()]
  const known = new Set(lines.map(({ material }) => material.id))
  const others = [...materials.values()].filter(({ id, archived }) => !archived && !known.has(id))
  const adjusts = steps.filter((step) => step.kind === 'adjust')
  const isOpen = (id: string): boolean => state.vessels.get(id)?.emptiedInto === undefined
  return {
    filledUg: inSink(state.ledger, 'filled'),
    vessels: [...plan.vessels.values()]
      .filter(({ id, kind }) => kind === 'vessel' && isOpen(id))
      .map(({ id, name }) => ({ value: id, label: name })),
    addable: [
      ...lines.map(({ line, material: { name } }) => ({ value: `line ${line.id}`, label: name, name, line: line.id })),
      ...others.map(({ id, name }) => ({
        value: `material ${id}`,
        label: `${name}, not in the formula`,
        name,
        materialId: id,
      })),
    ],
    adjustments: [...new Map(adjusts.map((step) => [`${step.property} ${step.line}`, step]))].map(([value, step]) => ({
      value,
      label: `${step.property} with ${plan.lines.get(step.line)?.material.name ?? step.line}`,
      step,
    })),
    checks: header.revision.specification.map(({ id, label }) => ({ value: id, label })),
    tools: [...new Set(steps.flatMap((step) => (step.kind === 'mix' ? [step.tool] : [])))],
  }
}
