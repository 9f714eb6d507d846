import type { Values } from '../../app/forms/field-spec'
import { settleTyped } from '../../app/forms/settle-typed'
import { evaluateSum } from '../../trade/typed-sum'
import type { DraftItem, FormulaDraft } from './draft'
import { mapItems } from './draft-edit'
import { fieldsOf } from './draft-options'
import type { ReadWorld } from './draft-read'
import { shareKeys } from './line-fields'
import { sumIn, withShares } from './share-text'

/** The draft with every typed sum worked out and every share put in %; what cannot be read stays as it was typed. */
export async function settleDraft(draft: FormulaDraft, world: ReadWorld, mark: '.' | ','): Promise<FormulaDraft> {
  const settled = new Map<string, DraftItem>()
  for (const item of itemsOf(draft).filter(isUnsettled)) {
    const values = await settleItem(draft, item, world, mark)
    if (JSON.stringify(values) !== JSON.stringify(item.values)) settled.set(item.id, { ...item, values })
  }
  if (settled.size === 0) return draft
  return mapItems(draft, (item) => {
    const values = settled.get(item.id)?.values
    return values === undefined ? item : { ...item, values }
  })
}

/** The worth of sums that are not known yet, by their text. */
export async function worthOfSums(texts: readonly string[]): Promise<ReadonlyMap<string, number>> {
  const worths = await Promise.all(texts.map((text) => evaluateSum(text)))
  return new Map(texts.flatMap((text, at) => (worths[at]?.ok ? [[text, worths[at].value] as const] : [])))
}

/** Sums in the shares of a line. */
export const sumsIn = (values: Values): readonly string[] =>
  shareKeys.flatMap((key) => {
    const sum = sumIn(values[key] ?? '')
    return sum === null ? [] : [sum]
  })

async function settleItem(draft: FormulaDraft, item: DraftItem, world: ReadWorld, mark: '.' | ','): Promise<Values> {
  const isLine = draft.phases.some(({ lines }) => lines.some((line) => line.id === item.id))
  if (!isLine) return settleTyped(fieldsOf(draft, item, world.options), item.values, mark)
  const sums = sumsIn(item.values)
  const known = sums.every((sum) => world.sums.has(sum)) ? world.sums : await worthOfSums(sums)
  const plain = withShares(item.values, { ...world, sums: known })
  const changed = shareKeys.filter((key) => plain[key] !== item.values[key])
  const shown = Object.fromEntries(changed.map((key) => [key, (plain[key] ?? '').replace('.', mark)]))
  return settleTyped(fieldsOf(draft, item, world.options), { ...item.values, ...shown }, mark)
}

/** Anything that is more than a plain number may be a sum or a mass; most texts are neither. */
const isUnsettled = ({ values }: DraftItem): boolean =>
  Object.values(values).some((text) => /\d\s*[^\d.,\s]|[(]/.test(text))

const itemsOf = (draft: FormulaDraft): readonly DraftItem[] => [
  draft.head,
  ...draft.phases.flatMap((phase) => [phase, ...phase.lines]),
  ...draft.steps,
  ...draft.vessels,
  ...draft.checks,
  ...draft.limits,
]
