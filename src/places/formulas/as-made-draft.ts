import { showNumber } from '../../app/forms/show-fields'
import type { MadeOtherwise } from '../../batch/made-otherwise'
import type { DraftItem, FormulaDraft } from './draft'
import { addLine, removeItem, setValue } from './draft-edit'

type NewId = () => string

/**
 * The draft with what was chosen of a batch as it was made: shares, times, temperatures, and additions as lines of their
 * own, weighed where they went in. The q.s. line makes up the rest; ranges are widened where a share lies outside.
 */
export function takeOver(
  draft: FormulaDraft,
  chosen: readonly MadeOtherwise[],
  mark: '.' | ',',
  newId: NewId,
): FormulaDraft {
  return chosen.reduce((all, each) => takeOne(all, each, mark, newId), draft)
}

function takeOne(draft: FormulaDraft, made: MadeOtherwise, mark: '.' | ',', newId: NewId): FormulaDraft {
  const set = (to: FormulaDraft, id: string, key: string, value: number) =>
    setValue(to, id, key, showNumber(value, mark), newId)
  switch (made.kind) {
    case 'share':
      return takeShare(draft, made.line, made.made * 100, set)
    case 'line-out':
      return removeItem(draft, made.line)
    case 'step-out':
      return removeItem(draft, made.step)
    case 'step':
      if (made.field === 'rpm') return set(set(draft, made.step, 'rpm.min', made.made), made.step, 'rpm.max', made.made)
      return set(draft, made.step, made.field, made.made)
    case 'unplanned':
      return takeAddition(draft, made, mark, newId)
  }
}

type SetNumber = (draft: FormulaDraft, id: string, key: string, value: number) => FormulaDraft

function takeShare(draft: FormulaDraft, id: string, percent: number, set: SetNumber): FormulaDraft {
  const line = draft.phases.flatMap(({ lines }) => lines).find((each) => each.id === id)
  if (line === undefined) return draft
  const needed = line.values['amount.kind'] === 'as-needed'
  const [min, max] = needed ? ['amount.min', 'amount.max'] : ['range.min', 'range.max']
  const end = (key: string) => Number((line.values[key] || 'NaN').replace(',', '.'))
  const taken = set(draft, id, needed ? 'amount.expected' : 'amount.fraction', percent)
  const lower = percent < end(min) ? set(taken, id, min, percent) : taken
  return percent > end(max) ? set(lower, id, max, percent) : lower
}

/** A new line where it went in: in the phase of the step before it, weighed into the same vessel right after it. */
function takeAddition(
  draft: FormulaDraft,
  made: Extract<MadeOtherwise, { kind: 'unplanned' }>,
  mark: '.' | ',',
  newId: NewId,
): FormulaDraft {
  const before = draft.steps.find(({ id }) => id === made.after)
  const listed = before?.values.phase ?? ''
  const phase = draft.phases.find(({ id }) => id === listed) ?? draft.phases.at(-1)
  if (phase === undefined) return draft
  const added = addLine(draft, phase.id, made.materialId ?? '', newId)
  const shared = setValue(added.draft, added.id, 'amount.fraction', showNumber(made.share * 100, mark), newId)
  const weighing = shared.steps.find(({ values }) => values.line === added.id)
  if (weighing === undefined) return shared
  const hasVessel = shared.vessels.some(({ id }) => id === made.vessel)
  const placed: DraftItem = {
    ...weighing,
    values: {
      ...weighing.values,
      ...(hasVessel ? { vessel: made.vessel } : {}),
      phase: listed || phase.id,
      instruction: made.reason,
    },
  }
  const others = shared.steps.filter(({ id }) => id !== weighing.id)
  const at = before === undefined ? 0 : others.findIndex(({ id }) => id === before.id) + 1
  return { ...shared, steps: others.toSpliced(at, 0, placed) }
}
