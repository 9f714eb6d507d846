import type { Lot, Material } from '../../batch/catalogue'
import { daysOver } from '../../batch/preflight-lots'
import type { BatchState } from '../../batch/state'
import type { KindOf } from '../../batch/step'
import { inSink } from '../../trade/ledger'
import type { Micrograms } from '../../trade/mass'

/** What there is beside the batch. */
export interface ReworkStore {
  readonly materials: ReadonlyMap<string, Material>
  readonly lots: ReadonlyMap<string, Lot>
  readonly todayIso: string
}

/** What the form of a rework offers: what this batch has, and what the store holds beside it. */
export interface ReworkChoices {
  readonly filledUg: Micrograms
  readonly vessels: readonly { readonly value: string; readonly label: string }[]
  readonly addable: readonly {
    readonly value: string
    readonly label: string
    readonly name: string
    readonly line?: string
    /** Of what is not in the formula: whole, with the lots that may be used. */
    readonly beside?: { readonly material: Material; readonly lots: readonly Lot[] }
  }[]
  /** Adjustments that the formula knows, with their material and window. */
  readonly adjustments: readonly { readonly value: string; readonly label: string; readonly step: KindOf<'adjust'> }[]
  readonly checks: readonly { readonly value: string; readonly label: string }[]
  readonly tools: readonly string[]
}

export function reworkChoices(state: BatchState, { materials, lots, todayIso }: ReworkStore): ReworkChoices {
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
      ...others.map((material) => ({
        value: `material ${material.id}`,
        label: `${material.name}, not in the formula`,
        name: material.name,
        beside: { material, lots: usableLots(lots, material.id, todayIso) },
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

/** Released and in date, the one that is to be used first on top. */
const usableLots = (lots: ReworkStore['lots'], materialId: string, todayIso: string): readonly Lot[] =>
  [...lots.values()]
    .filter((lot) => lot.materialId === materialId && lot.status === 'released' && daysOver(lot, todayIso) <= 0)
    .sort((a, b) => (lastDay(a) < lastDay(b) ? -1 : 1))

const lastDay = ({ expires = '9999', receivedOn = '9999', code }: Lot): string => `${expires} ${receivedOn} ${code}`
