import { type DraftItem, type DraftPhase, type FormulaDraft, finish } from './draft'

/** Changes of a draft; each answers a new draft. `newId` names what is added. */
type NewId = () => string

interface Added {
  readonly draft: FormulaDraft
  readonly id: string
}

/** One text of one part. A line that becomes q.s. or as needed gets the steps that fit. */
export function setValue(draft: FormulaDraft, id: string, key: string, text: string, newId: NewId): FormulaDraft {
  const changed = mapItems(draft, (item) =>
    item.id === id ? { ...item, values: { ...item.values, [key]: text } } : item,
  )
  if (key !== 'amount.kind') return changed
  return withSteps(text === 'as-needed' ? withoutWeighing(changed, id) : changed, newId)
}

/** A line at the end of a phase, with the step that weighs it. The first of an empty formula makes up to 100 %. */
export function addLine(draft: FormulaDraft, phase: string, materialId: string, newId: NewId): Added {
  const id = newId()
  const isFirst = draft.phases.every(({ lines }) => lines.length === 0)
  const line = { id, values: { materialId, 'amount.kind': isFirst ? 'qs' : 'fraction' } }
  const phases = draft.phases.map((each) => (each.id === phase ? { ...each, lines: [...each.lines, line] } : each))
  return { draft: withSteps({ ...draft, phases }, newId), id }
}

/** A line goes with its steps; a step with what waited for it. What still names a vessel or check says so at Save. */
export function removeItem(draft: FormulaDraft, id: string): FormulaDraft {
  const ofLine = draft.steps.filter(({ values }) => values.line === id).map((step) => step.id)
  const gone = new Set([id, ...ofLine])
  const stays = ({ id: each }: DraftItem) => !gone.has(each)
  const left: FormulaDraft = {
    ...draft,
    phases: draft.phases.filter(stays).map((phase) => ({ ...phase, lines: phase.lines.filter(stays) })),
    steps: draft.steps.filter(stays),
    vessels: draft.vessels.filter(stays),
    checks: draft.checks.filter(stays),
    limits: draft.limits.filter(stays),
  }
  return mapItems(left, (item) => withoutMentions(item, gone))
}

/** So many places up (below zero) or down in its own list. */
export function moveItem(draft: FormulaDraft, id: string, by: number): FormulaDraft {
  const phases = draft.phases.map((phase) => ({ ...phase, lines: moved(phase.lines, id, by) }))
  return {
    ...draft,
    phases: moved(phases, id, by),
    steps: moved(draft.steps, id, by),
    vessels: moved(draft.vessels, id, by),
    checks: moved(draft.checks, id, by),
    limits: moved(draft.limits, id, by),
  }
}

export function addPhase(draft: FormulaDraft, newId: NewId): Added {
  const id = newId()
  const taken = new Set(draft.phases.map(({ values }) => values.letter))
  const letter = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].find((each) => !taken.has(each)) ?? ''
  const phase: DraftPhase = { id, values: { letter, name: `Phase ${letter}` }, lines: [] }
  return { draft: { ...draft, phases: [...draft.phases, phase] }, id }
}

export function addStep(draft: FormulaDraft, kind: string, newId: NewId): Added {
  const id = newId()
  const last = draft.steps.at(-1)?.values
  const values = {
    kind,
    vessel: last?.vessel ?? firstVessel(draft),
    phase: last?.phase ?? draft.phases[0]?.id ?? finish,
  }
  return { draft: { ...draft, steps: [...draft.steps, { id, values }] }, id }
}

export function addVessel(draft: FormulaDraft, newId: NewId): Added {
  const id = newId()
  const vessel = { id, values: { name: '', kind: 'vessel' } }
  return { draft: { ...draft, vessels: [...draft.vessels, vessel] }, id }
}

export function addCheck(draft: FormulaDraft, newId: NewId): Added {
  const id = newId()
  const check = { id, values: { label: '', when: 'in-process' } }
  return { draft: { ...draft, checks: [...draft.checks, check] }, id }
}

export function addLimit(draft: FormulaDraft, newId: NewId): Added {
  const id = newId()
  const limit = { id, values: { name: '', 'of.kind': 'function' } }
  return { draft: { ...draft, limits: [...draft.limits, limit] }, id }
}

/** A step for every line that has none: weighed at the end of its phase's weighings, or adjusted with at the end. */
export function withSteps(draft: FormulaDraft, newId: NewId): FormulaDraft {
  return draft.phases.reduce(
    (all, phase) => phase.lines.reduce((each, line) => withStepOf(each, phase.id, line, newId), all),
    draft,
  )
}

function withStepOf(draft: FormulaDraft, phase: string, line: DraftItem, newId: NewId): FormulaDraft {
  if (draft.steps.some(({ values }) => values.line === line.id)) return draft
  if (line.values['amount.kind'] === 'as-needed') return withAdjuster(draft, phase, line, newId)
  const inPhase = (step: DraftItem) => step.values.phase === phase
  const lastWeighing = draft.steps.findLastIndex((step) => inPhase(step) && step.values.kind === 'weigh')
  const at = lastWeighing >= 0 ? lastWeighing + 1 : firstPlaceIn(draft, phase)
  const beside = draft.steps[lastWeighing] ?? draft.steps.find(inPhase)
  const vessel = beside?.values.vessel ?? firstVessel(draft)
  const step = { id: newId(), values: { kind: 'weigh', line: line.id, vessel, phase } }
  return { ...draft, steps: draft.steps.toSpliced(at, 0, step) }
}

/** Adjusted with by pH, the usual case, against the check of it, which is put in where there is none. */
function withAdjuster(draft: FormulaDraft, phase: string, line: DraftItem, newId: NewId): FormulaDraft {
  const isAdjustable = ({ values }: DraftItem) => values.property === 'pH' || values.property === 'viscosity'
  const found = draft.checks.find(isAdjustable)
  const check = found ?? { id: newId(), values: { label: 'pH', property: 'pH', when: 'in-process' } }
  const vessel = draft.steps.at(-1)?.values.vessel ?? firstVessel(draft)
  const property = check.values.property ?? 'pH'
  const values = { kind: 'adjust', property, line: line.id, check: check.id, vessel, phase }
  return {
    ...draft,
    steps: [...draft.steps, { id: newId(), values }],
    checks: found ? draft.checks : [...draft.checks, check],
  }
}

/** Before the first step of the phase, or after the last one of the phases before it. */
function firstPlaceIn(draft: FormulaDraft, phase: string): number {
  const first = draft.steps.findIndex(({ values }) => values.phase === phase)
  if (first >= 0) return first
  const before = new Set(
    draft.phases
      .slice(
        0,
        draft.phases.findIndex(({ id }) => id === phase),
      )
      .map(({ id }) => id),
  )
  return draft.steps.findLastIndex(({ values }) => before.has(values.phase ?? '')) + 1
}

const withoutWeighing = (draft: FormulaDraft, line: string): FormulaDraft =>
  draft.steps
    .filter(({ values }) => values.kind === 'weigh' && values.line === line)
    .reduce((left, step) => removeItem(left, step.id), draft)

/** Where `after` or `locksAfter` named what is gone. */
function withoutMentions<I extends DraftItem>(item: I, gone: ReadonlySet<string>): I {
  const { after = '', locksAfter = '' } = item.values
  const left = after.split('\n').filter((id) => !gone.has(id))
  if (left.join('\n') === after && !gone.has(locksAfter)) return item
  return {
    ...item,
    values: { ...item.values, after: left.join('\n'), locksAfter: gone.has(locksAfter) ? '' : locksAfter },
  }
}

/** Every part changed by itself; lists and phases that stay the same stay the same objects, as do the items in them. */
export function mapItems(draft: FormulaDraft, change: <I extends DraftItem>(item: I) => I): FormulaDraft {
  const all = <I extends DraftItem>(items: readonly I[]) => sameList(items, items.map(change))
  const phases = draft.phases.map((phase) => {
    const lines = all(phase.lines)
    const changed = change(phase)
    return lines === changed.lines ? changed : { ...changed, lines }
  })
  return {
    ...draft,
    head: change(draft.head),
    phases: sameList(draft.phases, phases),
    steps: all(draft.steps),
    vessels: all(draft.vessels),
    checks: all(draft.checks),
    limits: all(draft.limits),
  }
}

const sameList = <I>(before: readonly I[], next: readonly I[]): readonly I[] =>
  next.every((item, at) => item === before[at]) ? before : next

function moved<I extends DraftItem>(items: readonly I[], id: string, by: number): readonly I[] {
  const from = items.findIndex((item) => item.id === id)
  const to = from + by
  const item = items[from]
  if (item === undefined || to < 0 || to >= items.length) return items
  return items.toSpliced(from, 1).toSpliced(to, 0, item)
}

const firstVessel = (draft: FormulaDraft): string => draft.vessels[0]?.id ?? ''
