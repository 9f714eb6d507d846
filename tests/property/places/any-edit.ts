import fc from 'fast-check'
import type { FormulaDraft } from '../../../src/places/formulas/draft'
import {
  addCheck,
  addLimit,
  addLine,
  addPhase,
  addStep,
  addVessel,
  moveItem,
  removeItem,
  setValue,
  withSteps,
} from '../../../src/places/formulas/draft-edit'
import { placeLine, placeStep, stepLine } from '../../../src/places/formulas/draft-move'
import { splitLine } from '../../../src/places/formulas/draft-split'

/** One change that the editor can make, of a part chosen by its number. */
export interface Edit {
  readonly does: (typeof changes)[number]
  readonly part: number
  readonly to: number
  readonly by: -1 | 1
  readonly text: string
}

const changes = [
  'set',
  'kind',
  'line',
  'step-of',
  'phase',
  'vessel',
  'check',
  'limit',
  'remove',
  'move',
  'step',
  'place-line',
  'place-step',
  'split',
  'missing',
] as const

export const anyEdit: fc.Arbitrary<Edit> = fc.record({
  does: fc.constantFrom(...changes),
  part: fc.nat(40),
  to: fc.nat(12),
  by: fc.constantFrom(-1 as const, 1 as const),
  text: fc.constantFrom('', '3', '1,5', '3/0.3', '15 g', 'some'),
})

export function applyEdit(draft: FormulaDraft, { does, part, to, by, text }: Edit): FormulaDraft {
  const lines = draft.phases.flatMap((phase) => phase.lines)
  const all = [
    draft.head,
    ...draft.phases,
    ...lines,
    ...draft.steps,
    ...draft.vessels,
    ...draft.checks,
    ...draft.limits,
  ]
  const id = nth(all, part)?.id ?? ''
  const line = nth(lines, part)?.id ?? ''
  const phase = nth(draft.phases, to)?.id ?? ''
  const newId = () => `n${JSON.stringify(draft).length}-${part}`
  switch (does) {
    case 'set':
      return setValue(draft, id, 'amount.fraction', text, newId)
    case 'kind':
      return setValue(draft, line, 'amount.kind', ['fraction', 'qs', 'as-needed'][to % 3] ?? '', newId)
    case 'line':
      return addLine(draft, phase, 'm1', newId).draft
    case 'step-of':
      return addStep(draft, 'mix', newId).draft
    case 'phase':
      return addPhase(draft, newId).draft
    case 'vessel':
      return addVessel(draft, newId).draft
    case 'check':
      return addCheck(draft, newId).draft
    case 'limit':
      return addLimit(draft, newId).draft
    case 'remove':
      return removeItem(draft, id)
    case 'move':
      return moveItem(draft, id, by)
    case 'step':
      return stepLine(draft, line, by)
    case 'place-line':
      return placeLine(draft, line, phase, to)
    case 'place-step':
      return placeStep(draft, nth(draft.steps, part)?.id ?? '', to)
    case 'split':
      return splitLine(draft, line, { sizeUg: null, sums: new Map() }, '.', newId).draft
    case 'missing':
      return withSteps(draft, newId)
  }
}

const nth = <T>(items: readonly T[], at: number): T | undefined => items[at % Math.max(1, items.length)]
