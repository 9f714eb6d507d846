import type { FieldSpec } from '../../app/forms/field-spec'
import type { Formula, Revision } from '../../batch/formula'
import { type DraftItem, draftOf, type FormulaDraft } from './draft'
import { fieldsOf, optionsOf } from './draft-options'
import type { Options } from './fields'
import { shareOf, totalOf } from './total'

/** Two revisions, part by part in the order of the later one; what is only in the earlier one stands where it stood. */
export interface Comparison {
  readonly head: readonly ChangedField[]
  readonly lines: readonly ComparedLine[]
  readonly steps: readonly ComparedPart[]
  readonly vessels: readonly ComparedPart[]
  readonly checks: readonly ComparedPart[]
  readonly limits: readonly ComparedPart[]
}

export interface ComparedPart {
  readonly id: string
  readonly label: string
  readonly how: 'same' | 'changed' | 'moved' | 'added' | 'gone'
  readonly fields: readonly ChangedField[]
}

export interface ComparedLine extends ComparedPart {
  readonly phase: string
  /** Shares of the batch, of the q.s. line as worked out; null where the line is not there. */
  readonly was: number | null
  readonly is: number | null
}

export interface ChangedField {
  readonly label: string
  readonly was: string
  readonly is: string
}

/** `nameOf` gives a material's name. The formula's head is one for all revisions, so it is left out. */
export function compareRevisions(
  formula: Formula,
  before: Revision,
  after: Revision,
  nameOf: (materialId: string) => string,
  mark: '.' | ',',
): Comparison {
  const was = sideOf(formula, before, nameOf, mark)
  const is = sideOf(formula, after, nameOf, mark)
  const ids = matchedIds(was.draft, is.draft)
  const parts = (of: (draft: FormulaDraft) => readonly DraftItem[], labelOf: Label): ComparedPart[] =>
    compareLists(of(was.draft), of(is.draft), ids).map((pair) => partOf(pair, was, is, ids, labelOf))
  return {
    head: changedFields(was.draft.head, is.draft.head, was, is, ids),
    lines: compareLists(linesOf(was.draft), linesOf(is.draft), ids).map((pair) =>
      lineOf(
        pair,
        was,
        is,
        partOf(pair, was, is, ids, ({ values }) => nameOf(values.materialId ?? '')),
      ),
    ),
    steps: parts(
      ({ steps }) => steps,
      ({ id }, { options }) => (options.steps.find(({ value }) => value === id)?.label ?? '').replace(/^\d+ /, ''),
    ),
    vessels: parts(
      ({ vessels }) => vessels,
      ({ values }) => values.name ?? '',
    ),
    checks: parts(
      ({ checks }) => checks,
      ({ values }) => values.label ?? '',
    ),
    limits: parts(
      ({ limits }) => limits,
      ({ values }) => values.name ?? '',
    ),
  }
}

interface Side {
  readonly draft: FormulaDraft
  readonly options: Options
  readonly shareOf: (line: DraftItem) => number
}

type Label = (item: DraftItem, side: Side) => string

function sideOf(formula: Formula, revision: Revision, nameOf: (id: string) => string, mark: '.' | ','): Side {
  const draft = draftOf(formula, revision, mark)
  const used = new Set(linesOf(draft).map(({ values }) => values.materialId ?? ''))
  const options = optionsOf(
    draft,
    [...used].map((value) => ({ value, label: nameOf(value) })),
  )
  const world = { sizeUg: null, sums: new Map<string, number>() }
  const qs = totalOf(draft, world).qs ?? 0
  return {
    draft,
    options,
    shareOf: (line) => (line.values['amount.kind'] === 'qs' ? qs : (shareOf(line.values, world) ?? 0)),
  }
}

interface Pair {
  readonly was?: DraftItem
  readonly is?: DraftItem
  readonly moved: boolean
}

/** In the order of the later list; those that are gone after what stood before them. */
function compareLists(was: readonly DraftItem[], is: readonly DraftItem[], ids: ReadonlyMap<string, string>): Pair[] {
  const places = new Map(was.map(({ id }, at) => [id, at]))
  const placeOf = ({ id }: DraftItem) => places.get(ids.get(id) ?? '') ?? -1
  const staying = longestRise(is.map(placeOf))
  const pairs: Pair[] = is.map((item, at) => {
    const before = was[placeOf(item)]
    return before === undefined ? { is: item, moved: false } : { was: before, is: item, moved: !staying.has(at) }
  })
  const kept = new Set(is.map(placeOf))
  for (const [at, item] of was.entries()) {
    if (kept.has(at)) continue
    const before = pairs.findLastIndex((pair) => pair.was !== undefined && (places.get(pair.was.id) ?? -1) < at)
    pairs.splice(before + 1, 0, { was: item, moved: false })
  }
  return pairs
}

function partOf(pair: Pair, was: Side, is: Side, ids: ReadonlyMap<string, string>, labelOf: Label): ComparedPart {
  const { was: before, is: after } = pair
  if (after === undefined) {
    if (before === undefined) throw new TypeError('A pair of nothing')
    return { id: `gone ${before.id}`, label: labelOf(before, was), how: 'gone', fields: [] }
  }
  const label = labelOf(after, is)
  if (before === undefined) return { id: after.id, label, how: 'added', fields: [] }
  const fields = changedFields(before, after, was, is, ids)
  return { id: after.id, label, how: fields.length > 0 ? 'changed' : pair.moved ? 'moved' : 'same', fields }
}

/** A line that went into another phase is otherwise, not merely elsewhere. */
function lineOf(pair: Pair, was: Side, is: Side, part: ComparedPart): ComparedLine {
  const before = pair.was && phaseOf(was.draft, pair.was.id)
  const after = pair.is && phaseOf(is.draft, pair.is.id)
  const isElsewhere = before !== undefined && after !== undefined && before !== after
  return {
    ...part,
    ...(isElsewhere ? { how: 'changed', fields: [{ label: 'Phase', was: before, is: after }, ...part.fields] } : {}),
    phase: after ?? before ?? '',
    was: pair.was ? was.shareOf(pair.was) : null,
    is: pair.is ? is.shareOf(pair.is) : null,
  }
}

function changedFields(
  before: DraftItem,
  after: DraftItem,
  was: Side,
  is: Side,
  ids: ReadonlyMap<string, string>,
): readonly ChangedField[] {
  const specs = new Map(
    [...fieldsOf(was.draft, before, was.options), ...fieldsOf(is.draft, after, is.options)].map((spec) => [
      spec.key,
      spec,
    ]),
  )
  return [...specs.values()].flatMap((spec) => {
    const [from, to] = [before.values[spec.key] ?? '', after.values[spec.key] ?? '']
    if (from === translated(to, spec, ids)) return []
    return [{ label: spec.label, was: said(from, before, was, spec.key), is: said(to, after, is, spec.key) }]
  })
}

/** What another part is called, in place of its id. */
function said(text: string, item: DraftItem, side: Side, key: string): string {
  const spec = fieldsOf(side.draft, item, side.options).find((each) => each.key === key)
  if (spec?.kind === 'switch') return text === 'yes' ? 'yes' : 'no'
  if (spec?.kind === 'choice' || spec?.kind === 'many') {
    const labels = new Map(spec.options.map(({ value, label }) => [value, label]))
    return text
      .split('\n')
      .map((each) => labels.get(each) ?? each)
      .join(', ')
  }
  if (text === '' || spec?.kind !== 'number') return text
  return spec.percent ? `${text} %` : `${text} ${spec.unit ?? ''}`.trim()
}

/** Ids of the later revision as the earlier one has them. */
function translated(text: string, spec: FieldSpec, ids: ReadonlyMap<string, string>): string {
  if (spec.kind !== 'choice' && spec.kind !== 'many') return text
  return text
    .split('\n')
    .map((each) => ids.get(each) ?? each)
    .join('\n')
}

/** By id; what is left of lines by their material, of steps by kind and line, of all others by their name. */
function matchedIds(was: FormulaDraft, is: FormulaDraft): ReadonlyMap<string, string> {
  const ids = new Map<string, string>()
  const match = (before: readonly DraftItem[], after: readonly DraftItem[], keyOf: (item: DraftItem) => string) => {
    const here = new Set(before.map(({ id }) => id))
    for (const { id } of after) if (here.has(id)) ids.set(id, id)
    const left = before.filter(({ id }) => !ids.has(id))
    for (const item of after) {
      if (ids.has(item.id)) continue
      const at = left.findIndex((each) => keyOf(each) === keyOf(item))
      const [found] = at < 0 ? [] : left.splice(at, 1)
      if (found) ids.set(item.id, found.id)
    }
  }
  match(was.phases, is.phases, ({ values }) => values.letter ?? '')
  match(linesOf(was), linesOf(is), ({ values }) => values.materialId ?? '')
  match(was.vessels, is.vessels, ({ values }) => values.name ?? '')
  match(was.checks, is.checks, ({ values }) => values.label ?? '')
  match(was.limits, is.limits, ({ values }) => values.name ?? '')
  const keyOfStep = ({ values: { kind, line = '', check = '', cup, from, title } }: DraftItem) =>
    [kind, ids.get(line) ?? line, ids.get(check) ?? check, ids.get(cup ?? from ?? '') ?? cup ?? from, title].join(' ')
  match(was.steps, is.steps, keyOfStep)
  return ids
}

/** Places of a longest rising run: what stays while the others move past it. Those below nought belong to none. */
function longestRise(values: readonly number[]): ReadonlySet<number> {
  const best: { readonly length: number; readonly before: number }[] = []
  for (const [at, value] of values.entries()) {
    const [length, before] = values
      .slice(0, at)
      .reduce<readonly [number, number]>(
        (most, each, place) =>
          each >= 0 && each < value && (best[place]?.length ?? 0) >= most[0] ? [best[place]?.length ?? 0, place] : most,
        [0, -1],
      )
    best.push({ length: value < 0 ? 0 : length + 1, before })
  }
  const rise = new Set<number>()
  const longest = Math.max(0, ...best.map(({ length }) => length))
  for (let at = best.findIndex(({ length }) => length === longest); at >= 0 && longest > 0; at = best[at]?.before ?? -1)
    rise.add(at)
  return rise
}

const linesOf = ({ phases }: FormulaDraft): readonly DraftItem[] => phases.flatMap(({ lines }) => lines)

const phaseOf = ({ phases }: FormulaDraft, line: string): string =>
  phases.find(({ lines }) => lines.some(({ id }) => id === line))?.values.letter ?? ''
