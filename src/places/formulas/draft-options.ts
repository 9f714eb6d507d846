import type { FieldOption, FieldSpec } from '../../app/forms/field-spec'
import { type DraftItem, type FormulaDraft, finish } from './draft'
import { checkFields, headFields, limitFields, type Options, phaseFields, vesselFields } from './fields'
import { lineFields } from './line-fields'
import { stepFields, stepKinds } from './step-fields'

/** What the choices of this draft's forms offer. */
export function optionsOf(draft: FormulaDraft, materials: readonly FieldOption[]): Options {
  const labels = new Map(materials.map(({ value, label }) => [value, label]))
  const nameOf = (line: DraftItem | undefined) => labels.get(line?.values.materialId ?? '') ?? 'no material yet'
  const lines = draft.phases.flatMap((phase) => phase.lines)
  const lineById = new Map(lines.map((line) => [line.id, line]))
  const stepName = ({ values }: DraftItem) =>
    values.title?.trim() ||
    (values.kind === 'weigh' ? nameOf(lineById.get(values.line ?? '')) : kindLabels.get(values.kind ?? '')) ||
    'step'
  const named = (items: readonly DraftItem[], key: string) =>
    items.map(({ id, values }) => ({ value: id, label: values[key]?.trim() || 'without a name' }))
  return {
    materials,
    phases: [
      ...draft.phases.map(({ id, values }) => ({
        value: id,
        label: `${values.letter ?? ''} ${values.name ?? ''}`.trim(),
      })),
      { value: finish, label: 'after the phases' },
    ],
    lines: lines.map((line) => ({ value: line.id, label: nameOf(line) })),
    steps: draft.steps.map((step, index) => ({ value: step.id, label: `${index + 1} ${stepName(step)}` })),
    vessels: named(draft.vessels, 'name'),
    checks: named(draft.checks, 'label'),
  }
}

/** The same object for as long as nothing that a choice offers has changed: what was read with it then still holds. */
export function sameOptions(before: Options | null, next: Options): Options {
  if (before === null) return next
  const kept = Object.fromEntries(
    optionKeys.map((key) => [key, areEqual(before[key], next[key]) ? before[key] : next[key]]),
  ) as unknown as Options
  return optionKeys.every((key) => kept[key] === before[key]) ? before : kept
}

/** The same object for as long as the same things can be chosen, whatever they are called and in which order they stand. */
export function sameChoices(before: Options | null, next: Options): Options {
  if (before === null || before === next) return next
  return optionKeys.every((key) => offersSame(before[key], next[key])) ? before : next
}

/** The form of one part of the draft. */
export function fieldsOf(draft: FormulaDraft, item: DraftItem, options: Options): readonly FieldSpec[] {
  const { id, values } = item
  if (id === draft.head.id) return headFields
  if (draft.phases.some((phase) => phase.id === id)) return phaseFields
  if (draft.vessels.some((vessel) => vessel.id === id)) return vesselFields
  if (draft.checks.some((check) => check.id === id)) return checkFields(values.property ?? '')
  if (draft.limits.some((limit) => limit.id === id)) return limitFields(values['of.kind'] ?? '')
  if (draft.steps.some((step) => step.id === id)) {
    // A step does not wait for itself.
    const others = options.steps.filter(({ value }) => value !== id)
    return stepFields(values.kind ?? '', { ...options, steps: others })
  }
  return lineFields(values['amount.kind'] ?? '', options)
}

const optionKeys = ['materials', 'phases', 'lines', 'steps', 'vessels', 'checks'] as const

const kindLabels: ReadonlyMap<string, string> = new Map(stepKinds.map(({ value, label }) => [value, label]))

const areEqual = (a: readonly FieldOption[], b: readonly FieldOption[]): boolean =>
  a === b ||
  (a.length === b.length && a.every(({ value, label }, at) => value === b[at]?.value && label === b[at]?.label))

function offersSame(a: readonly FieldOption[], b: readonly FieldOption[]): boolean {
  if (a === b) return true
  const values = new Set(a.map(({ value }) => value))
  return a.length === b.length && b.every(({ value }) => values.has(value))
}
