import type { FieldOption, FieldSpec } from '../../app/forms/field-spec'
import { type FieldErrors, type FieldRefusal, readFields } from '../../app/forms/read-fields'
import { settleSums } from '../../app/forms/settle-sums'
import type { Formula, Revision } from '../../batch/formula'
import { revisionSchema } from '../../batch/schemas/formula'
import { type DocumentRefusal, readDocument } from '../../batch/schemas/read-document'
import { accept, type Result, refuse } from '../../trade/result'
import { type DraftItem, type FormulaDraft, finish } from './draft'
import { checkFields, headFields, lineFields, noOptions, type Options, phaseFields, vesselFields } from './fields'
import { stepFields, stepKinds } from './step-fields'

export interface ReadDraft {
  readonly head: Pick<Formula, 'code' | 'name' | 'nickname' | 'contact'>
  readonly revision: Revision
}

/** Fields that cannot be read, by the id of their line, step, vessel, check or `head`. */
export interface DraftErrors {
  readonly items: Readonly<Record<string, FieldErrors>>
  readonly document?: DocumentRefusal
}

/** The revision that the typed texts make, under `number`. */
export function readDraft(draft: FormulaDraft, options: Options, number: number): Result<ReadDraft, DraftErrors> {
  const items: Record<string, FieldErrors> = {}
  const read = (item: DraftItem, specs: readonly FieldSpec[]): Record<string, unknown> => {
    const done = readFields(specs, item.values)
    const errors = done.ok ? pairErrors(item) : { ...done.refusal, ...pairErrors(item) }
    if (Object.keys(errors).length > 0) items[item.id] = errors
    return done.ok ? done.value : {}
  }
  const letters = new Map(draft.phases.map(({ id, values }) => [id, values.letter?.trim() ?? '']))
  const { code, name, nickname, contact, ...head } = read(draft.head, headFields)
  const revision = {
    ...head,
    number,
    phases: draft.phases.map((phase) => ({
      ...read(phase, phaseFields),
      lines: phase.lines.map((line) => finishLine(line, draft, read(line, fieldsOf(draft, line.id, options)))),
    })),
    procedure: draft.steps.map((step) => ({
      ...withoutPortion(read(step, fieldsOf(draft, step.id, options))),
      id: step.id,
      kind: step.values.kind,
      phase: letters.get(step.values.phase ?? '') ?? finish,
    })),
    vessels: draft.vessels.map((vessel) => ({ ...read(vessel, vesselFields), id: vessel.id })),
    specification: draft.checks.map((check) => finishCheck({ ...read(check, checkFields), id: check.id })),
  }
  if (Object.keys(items).length > 0) return refuse({ items })
  const checked = readDocument(revisionSchema, revision)
  if (!checked.ok) return refuse({ items, document: checked.refusal })
  // Read through headFields above, which give these four as texts and one of the two contacts.
  return accept({ head: { code, name, nickname, contact } as ReadDraft['head'], revision: checked.value })
}

/** What the choices of this draft's forms offer. */
export function optionsOf(draft: FormulaDraft, materials: readonly FieldOption[]): Options {
  const nameOf = (id: string | undefined) => materials.find(({ value }) => value === id)?.label ?? 'no material yet'
  const lines = draft.phases.flatMap((phase) => phase.lines)
  const lineName = (id: string | undefined) => nameOf(lines.find((line) => line.id === id)?.values.materialId)
  const stepName = ({ values }: DraftItem) =>
    values.title?.trim() ||
    (values.kind === 'weigh' ? lineName(values.line) : stepKinds.find(({ value }) => value === values.kind)?.label) ||
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
    lines: lines.map((line) => ({ value: line.id, label: nameOf(line.values.materialId) })),
    steps: draft.steps.map((step, index) => ({ value: step.id, label: `${index + 1} ${stepName(step)}` })),
    vessels: named(draft.vessels, 'name'),
    checks: named(draft.checks, 'label'),
  }
}

/** The form of one part of the draft. */
export function fieldsOf(draft: FormulaDraft, id: string, options: Options): readonly FieldSpec[] {
  if (id === draft.head.id) return headFields
  if (draft.phases.some((phase) => phase.id === id)) return phaseFields
  if (draft.vessels.some((vessel) => vessel.id === id)) return vesselFields
  if (draft.checks.some((check) => check.id === id)) return checkFields
  const step = draft.steps.find((each) => each.id === id)
  if (step) {
    const others = options.steps.filter(({ value }) => value !== id)
    return stepFields(step.values.kind ?? '', { ...options, steps: others })
  }
  const line = draft.phases.flatMap(({ lines }) => lines).find((each) => each.id === id)
  return lineFields(line?.values['amount.kind'] ?? '', options)
}

/** The draft with every typed sum worked out. */
export async function settleDraft(draft: FormulaDraft, options: Options, mark: '.' | ','): Promise<FormulaDraft> {
  const settle = async <I extends DraftItem>(item: I): Promise<I> => ({
    ...item,
    values: await settleSums(fieldsOf(draft, item.id, options), item.values, mark),
  })
  const all = <I extends DraftItem>(items: readonly I[]) => Promise.all(items.map((item) => settle(item)))
  const phases = await Promise.all(
    draft.phases.map(async (phase) => ({ ...(await settle(phase)), lines: await all(phase.lines) })),
  )
  return {
    ...draft,
    phases,
    head: await settle(draft.head),
    steps: await all(draft.steps),
    vessels: await all(draft.vessels),
    checks: await all(draft.checks),
  }
}

type Plain = Record<string, unknown>

/** Pairs of fields that must both be there, or not both. */
function pairErrors({ values }: DraftItem): Record<string, FieldRefusal> {
  const filled = (key: string) => (values[key] ?? '').trim() !== ''
  const errors: Record<string, FieldRefusal> = {}
  if (filled('tolerance.relative') && filled('tolerance.absoluteUg'))
    errors['tolerance.absoluteUg'] = { code: 'FIELD_ONE_OF_TWO' }
  if (values.kind === 'mix' && filled('rpm.min') !== filled('rpm.max'))
    errors[filled('rpm.min') ? 'rpm.max' : 'rpm.min'] = { code: 'FIELD_EMPTY', label: 'The other end' }
  if (values['basis.kind'] === 'dilution' && !filled('basis.fraction'))
    errors['basis.fraction'] = { code: 'FIELD_EMPTY', label: 'The dilution' }
  return errors
}

/** Open ends of the range are 0 and 100 %; the portions of a q.s. line are what its weigh steps say. */
function finishLine({ id }: DraftItem, draft: FormulaDraft, line: Plain): Plain {
  const { range, amount } = line
  return {
    ...line,
    id,
    ...(isPlain(range) ? { range: { min: 0, max: 1, ...range } } : {}),
    ...(isPlain(amount) && amount.kind === 'qs' ? { amount: { ...amount, portions: portionsOf(id, draft) } } : {}),
  }
}

function portionsOf(line: string, draft: FormulaDraft): Plain[] {
  const specs = stepFields('weigh', noOptions).filter(({ key }) => key === 'portion')
  return draft.steps
    .filter(({ values }) => values.kind === 'weigh' && values.line === line)
    .map(({ id, values }) => {
      const read = readFields(specs, values)
      const share = read.ok ? read.value.portion : undefined
      return share === undefined ? { step: id, rest: true } : { step: id, fraction: share }
    })
}

function withoutPortion({ portion: _ofTheLine, ...step }: Plain): Plain {
  return step
}

function finishCheck({ basis, ...check }: Plain): Plain {
  return isPlain(basis) && basis.kind !== undefined ? { ...check, basis } : check
}

const isPlain = (value: unknown): value is Plain => typeof value === 'object' && value !== null
