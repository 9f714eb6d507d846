import type { Values } from '../../app/forms/field-spec'
import { showFields } from '../../app/forms/show-fields'
import type { Formula, Phase, Revision } from '../../batch/formula'
import type { Step } from '../../batch/step'
import { checkFields, headFields, limitFields, noOptions, phaseFields, vesselFields } from './fields'
import { lineFields } from './line-fields'
import { stepFields } from './step-fields'

/** One line, step, vessel or check while it is changed, by the texts of its form. */
export interface DraftItem {
  readonly id: string
  readonly values: Values
}

export interface DraftPhase extends DraftItem {
  readonly lines: readonly DraftItem[]
}

/** A formula while it is changed: all as typed, so that nothing half-written is lost. Steps name phases by draft id. */
export interface FormulaDraft {
  readonly id: string
  /** The revision that it was taken from; null while the formula has never been saved. */
  readonly from: number | null
  readonly head: DraftItem
  readonly phases: readonly DraftPhase[]
  readonly steps: readonly DraftItem[]
  readonly vessels: readonly DraftItem[]
  readonly checks: readonly DraftItem[]
  /** Limits over several lines together. */
  readonly limits: readonly DraftItem[]
}

/** What is listed after the phases stands under this name. */
export const finish = 'finish'

/** The texts of one revision, ready to be changed. An approval is of the old text and does not come along. */
export function draftOf(formula: Formula, revision: Revision, mark: '.' | ','): FormulaDraft {
  const { phases, procedure, specification, vessels, sharedLimits = [] } = revision
  const { approvedBy: _by, approvedAt: _at, ...rest } = revision
  const { code, name, nickname, contact } = formula
  const head = { ...rest, code, name, nickname, contact }
  return {
    id: formula.id,
    from: revision.number,
    head: { id: 'head', values: textsOf(headFields, head, mark) },
    phases: phases.map((phase, index) => draftPhase(phase, index, mark)),
    steps: procedure.map((step) => draftStep(step, phases, mark)),
    vessels: vessels.map((each) => ({ id: each.id, values: textsOf(vesselFields, each, mark) })),
    checks: specification.map((each) => ({ id: each.id, values: textsOf(checkFields(each.property), each, mark) })),
    limits: sharedLimits.map((each) => ({ id: each.id, values: textsOf(limitFields(each.of.kind), each, mark) })),
  }
}

/** A copy that stands on its own: a new formula at its first revision. */
export function duplicateOf(draft: FormulaDraft, id: string): FormulaDraft {
  const { name = '', code = '' } = draft.head.values
  const values = { ...draft.head.values, name: `${name}, copy`, code: `${code}-COPY`, note: '' }
  return { ...draft, id, from: null, head: { ...draft.head, values } }
}

/** Where an empty formula begins: one phase, one vessel. Its first line becomes the q.s. line. */
export function emptyDraft(id: string, newId: () => string): FormulaDraft {
  return {
    id,
    from: null,
    head: { id: 'head', values: { contact: 'leave-on', usualSizeUg: '500' } },
    phases: [{ id: newId(), values: { letter: 'A', name: 'Phase A' }, lines: [] }],
    steps: [],
    vessels: [{ id: newId(), values: { name: 'Main beaker', kind: 'vessel' } }],
    checks: [],
    limits: [],
  }
}

const draftPhase = (phase: Phase, index: number, mark: '.' | ','): DraftPhase => ({
  id: phaseIdOf(index),
  values: textsOf(phaseFields, phase, mark),
  lines: phase.lines.map((line) => ({
    id: line.id,
    values: textsOf(lineFields(line.amount.kind, noOptions), line, mark),
  })),
})

function draftStep(step: Step, phases: readonly Phase[], mark: '.' | ','): DraftItem {
  const portion = portionOf(step, phases)
  const phase = phases.findIndex(({ letter }) => letter === step.phase)
  return {
    id: step.id,
    values: {
      ...textsOf(stepFields(step.kind, noOptions), { ...step, portion }, mark),
      kind: step.kind,
      phase: phase < 0 ? finish : phaseIdOf(phase),
    },
  }
}

/** The fixed share of the q.s. line that a weigh step takes; nothing where it takes the rest. */
function portionOf(step: Step, phases: readonly Phase[]): number | undefined {
  for (const { amount } of phases.flatMap(({ lines }) => lines)) {
    if (amount.kind !== 'qs') continue
    const portion = amount.portions.find((each) => each.step === step.id)
    if (portion !== undefined && 'fraction' in portion) return portion.fraction
  }
  return undefined
}

/** By place and not by letter: two phases may bear the same letter while they are changed. */
const phaseIdOf = (index: number): string => `phase-${index + 1}`

/** Without those that are empty: a draft is kept as text with every key that is pressed. */
const textsOf = (...shown: Parameters<typeof showFields>): Values =>
  Object.fromEntries(Object.entries(showFields(...shown)).filter(([, text]) => text !== ''))
