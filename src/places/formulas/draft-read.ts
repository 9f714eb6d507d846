import type { FieldSpec, Values } from '../../app/forms/field-spec'
import { type FieldErrors, type FieldRefusal, readField, readFields } from '../../app/forms/read-fields'
import type { Formula, Revision } from '../../batch/formula'
import { revisionSchema } from '../../batch/schemas/formula'
import { type DocumentRefusal, readDocument } from '../../batch/schemas/read-document'
import { readMass } from '../../trade/number-text'
import { accept, type Result, refuse } from '../../trade/result'
import { type DraftItem, type FormulaDraft, finish } from './draft'
import { checkFields, headFields, limitFields, noOptions, type Options, phaseFields, vesselFields } from './fields'
import { lineFields } from './line-fields'
import { type ShareWorld, shareErrors, withShares } from './share-text'
import { stepFields } from './step-fields'

export interface ReadDraft {
  readonly head: Pick<Formula, 'code' | 'name' | 'nickname' | 'contact'>
  readonly revision: Revision
}

/** What the texts of a draft are read with. Kept by identity: the same object, the same reading. */
export interface ReadWorld extends ShareWorld {
  readonly options: Options
}

/** Fields that cannot be read, by the id of their line, step, vessel, check, limit or `head`. */
export interface DraftErrors {
  readonly items: Readonly<Record<string, FieldErrors>>
  readonly document?: DocumentRefusal
}

/** The revision that the typed texts make, under `number`. */
export function readDraft(draft: FormulaDraft, world: ReadWorld, number: number): Result<ReadDraft, DraftErrors> {
  const items = draftErrors(draft, world)
  if (Object.keys(items).length > 0) return refuse({ items })
  const read = reader(world)
  const letters = new Map(draft.phases.map(({ id, values }) => [id, values.letter?.trim() ?? '']))
  const { code, name, nickname, contact, ...head } = read.head(draft.head).value
  const limits = draft.limits.map((limit) => ({ ...read.limit(limit).value, id: limit.id }))
  const revision = {
    ...head,
    number,
    phases: draft.phases.map((phase) => ({
      ...read.phase(phase).value,
      lines: phase.lines.map((line) => finishLine(line, draft, read.line(line).value)),
    })),
    procedure: draft.steps.map((step) => ({
      ...withoutPortion(read.step(step).value),
      id: step.id,
      kind: step.values.kind,
      phase: letters.get(step.values.phase ?? '') ?? finish,
    })),
    vessels: draft.vessels.map((vessel) => ({ ...read.vessel(vessel).value, id: vessel.id })),
    specification: draft.checks.map((check) => finishCheck({ ...read.check(check).value, id: check.id })),
    ...(limits.length > 0 ? { sharedLimits: limits } : {}),
  }
  const checked = readDocument(revisionSchema, revision)
  if (!checked.ok) return refuse({ items, document: checked.refusal })
  // Read through headFields above, which give these four as texts and one of the two contacts.
  return accept({ head: { code, name, nickname, contact } as ReadDraft['head'], revision: checked.value })
}

/** The fields that cannot be read, without what makes a revision of the rest. */
export function draftErrors(draft: FormulaDraft, world: ReadWorld): DraftErrors['items'] {
  const read = reader(world)
  const all: [DraftItem, FieldErrors][] = [
    [draft.head, read.head(draft.head).errors],
    ...draft.phases.map((phase): [DraftItem, FieldErrors] => [phase, phaseErrors(phase, draft, world)]),
    ...draft.phases.flatMap(({ lines }) =>
      lines.map((each): [DraftItem, FieldErrors] => [each, read.line(each).errors]),
    ),
    ...draft.steps.map((each): [DraftItem, FieldErrors] => [each, read.step(each).errors]),
    ...draft.vessels.map((each): [DraftItem, FieldErrors] => [each, read.vessel(each).errors]),
    ...draft.checks.map((each): [DraftItem, FieldErrors] => [each, read.check(each).errors]),
    ...draft.limits.map((each): [DraftItem, FieldErrors] => [each, read.limit(each).errors]),
  ]
  return Object.fromEntries(all.flatMap(([{ id }, errors]) => (errors === noErrors ? [] : [[id, errors]])))
}

/** The mass that shares in g are shares of; null while it cannot be read. */
export function usualSizeOf(draft: FormulaDraft): number | null {
  const read = readMass(draft.head.values.usualSizeUg ?? '', { negative: false, zero: false })
  return read.ok ? read.value : null
}

type Plain = Record<string, unknown>

interface ReadItem {
  readonly value: Plain
  /** `noErrors` itself where there are none. */
  readonly errors: FieldErrors
}

const noErrors: FieldErrors = {}

/** Items are immutable: each is read once for as long as what it is read with stays the same. */
const remembered = new WeakMap<ReadWorld, WeakMap<DraftItem, ReadItem>>()

function reader(world: ReadWorld) {
  const known = remembered.get(world) ?? new WeakMap<DraftItem, ReadItem>()
  remembered.set(world, known)
  const once = (read: (item: DraftItem) => ReadItem) => (item: DraftItem) => {
    const before = known.get(item)
    if (before !== undefined) return before
    const done = read(item)
    known.set(item, done)
    return done
  }
  const by = (specsOf: (item: DraftItem) => readonly FieldSpec[]) => once((item) => readItem(item, specsOf(item)))
  return {
    head: by(() => headFields),
    phase: by(() => phaseFields),
    vessel: by(() => vesselFields),
    check: by(({ values }) => checkFields(values.property ?? '')),
    limit: by(({ values }) => limitFields(values['of.kind'] ?? '')),
    step: by(({ values }) => stepFields(values.kind ?? '', world.options)),
    line: once((item) => {
      const values = withShares(item.values, world)
      const specs = lineFields(values['amount.kind'] ?? '', world.options)
      return readItem({ ...item, values }, specs, shareErrors(item.values, world))
    }),
  }
}

function readItem(item: DraftItem, specs: readonly FieldSpec[], more: FieldErrors = noErrors): ReadItem {
  const done = readFields(specs, item.values)
  const shown = Object.entries(more).filter(([key]) => specs.some((spec) => spec.key === key))
  const pairs = done.ok ? { ...pairErrors(item), ...unordered(item.values, specs) } : pairErrors(item)
  const errors = { ...(done.ok ? {} : done.refusal), ...pairs, ...Object.fromEntries(shown) }
  return { value: done.ok ? done.value : {}, errors: Object.keys(errors).length > 0 ? errors : noErrors }
}

/** Steps are listed under a phase by its letter, so that no two may have the same. */
function phaseErrors(phase: DraftItem, draft: FormulaDraft, world: ReadWorld): FieldErrors {
  const { errors } = reader(world).phase(phase)
  const letter = phase.values.letter?.trim() ?? ''
  const isTwice = draft.phases.some(({ id, values }) => id !== phase.id && values.letter?.trim() === letter)
  return letter !== '' && isTwice ? { ...errors, letter: { code: 'FIELD_TWICE' } } : errors
}

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
  if (filled('of.kind') && !filled('min') && !filled('max'))
    errors.max = { code: 'FIELD_EMPTY', label: 'One of the two ends' }
  return errors
}

/** Where both ends of a range are there, and in the wrong order. */
function unordered(values: Values, specs: readonly FieldSpec[]): Record<string, FieldRefusal> {
  const worth = (key: string): number => {
    const spec = specs.find((each) => each.key === key)
    const read = spec && readField(spec, values[key] ?? '')
    return read?.ok && typeof read.value === 'number' ? read.value : Number.NaN
  }
  return Object.fromEntries(
    ends
      .filter(([min, max]) => (values[max] ?? '') !== '' && worth(min) > worth(max))
      .map(([, max]) => [max, { code: 'FIELD_UNORDERED' } as const]),
  )
}

const ends = [
  ['range.min', 'range.max'],
  ['limits.min', 'limits.max'],
  ['rpm.min', 'rpm.max'],
  ['scale.least', 'scale.most'],
  ['amount.min', 'amount.max'],
  ['min', 'max'],
] as const

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

/** A scale with an end missing is none: the usual one counts. */
function finishCheck({ basis, scale, ...check }: Plain): Plain {
  const isScale = isPlain(scale) && ['least', 'most', 'low', 'high'].every((end) => scale[end] !== undefined)
  return {
    ...check,
    ...(isPlain(basis) && basis.kind !== undefined ? { basis } : {}),
    ...(isScale ? { scale } : {}),
  }
}

const isPlain = (value: unknown): value is Plain => typeof value === 'object' && value !== null
