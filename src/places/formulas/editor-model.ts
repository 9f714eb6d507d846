import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import type { FieldOption } from '../../app/forms/field-spec'
import { formSentenceOf } from '../../app/refusals/forms'
import { checkRevision } from '../../batch/schemas/check-revision'
import type { FormulaDraft } from './draft'
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
} from './draft-edit'
import { draftKey } from './draft-keeping'
import { placeLine, placeStep, stepLine } from './draft-move'
import { optionsOf, sameChoices, sameOptions } from './draft-options'
import { draftErrors, type ReadDraft, type ReadWorld, readDraft, usualSizeOf } from './draft-read'
import { settleDraft, sumsIn, worthOfSums } from './draft-settle'
import { splitLine } from './draft-split'
import { type Sentences, sentencesOf, unreadSentence } from './editor-errors'
import { endRun, type History, record, redo, startHistory, undo } from './editor-history'
import { storeRevision } from './editor-save'
import type { Options } from './fields'
import { type Total, totalOf } from './total'

/** A formula while it is changed. Every change is kept at once; Save makes a revision of it or says what is missing. */
export interface EditorModel {
  readonly draft: ReadonlySignal<FormulaDraft>
  readonly options: ReadonlySignal<Options>
  /** What materials and steps are called, by id. */
  readonly names: ReadonlySignal<{ readonly [F in 'materials' | 'steps']: ReadonlyMap<string, string> }>
  readonly world: ReadonlySignal<ReadWorld>
  readonly total: ReadonlySignal<Total>
  /** What the shares of rows are shown and typed in. */
  readonly unit: ReadonlySignal<'%' | 'g'>
  readonly setUnit: (unit: '%' | 'g') => void
  /** The part whose form is open. */
  readonly open: ReadonlySignal<string | null>
  /** Sentences by part and field; of what is still empty only once Save was tried. */
  readonly fieldErrors: ReadonlySignal<Readonly<Record<string, Sentences>>>
  /** The revision as it stands; null while a field cannot be read. Costly: to be read when the typing pauses. */
  readonly revision: ReadonlySignal<ReadDraft | null>
  /** What keeps the formula from being weighed, as sentences. As costly. */
  readonly problems: ReadonlySignal<readonly string[]>
  /** Why the last Save did not happen. */
  readonly refusal: ReadonlySignal<string | null>
  readonly saving: ReadonlySignal<boolean>
  readonly canUndo: ReadonlySignal<boolean>
  readonly canRedo: ReadonlySignal<boolean>
  readonly undo: () => void
  readonly redo: () => void
  readonly toggle: (id: string) => void
  readonly set: (id: string, key: string, text: string) => void
  readonly add: (what: 'phase' | 'vessel' | 'check' | 'limit') => void
  /** Answers the new line; without a material its form opens. */
  readonly addLine: (phase: string, materialId?: string) => string
  readonly addStep: (kind: string) => void
  readonly addMissingSteps: () => void
  readonly remove: (id: string) => void
  readonly move: (id: string, by: -1 | 1) => void
  /** One place up or down, across the ends of its phase. */
  readonly stepLine: (id: string, by: -1 | 1) => void
  readonly placeLine: (id: string, phase: string, at: number) => void
  readonly placeStep: (id: string, at: number) => void
  /** A vessel, check or limit from one place of its list to another. */
  readonly moveTo: (id: string, from: number, to: number) => void
  readonly split: (id: string) => void
  /** A field was left: sums are worked out, masses become shares, and what is typed next is undone by itself. */
  readonly settle: () => Promise<void>
  /** True once the revision stands in the catalogue. */
  readonly save: () => Promise<boolean>
  readonly discard: () => Promise<void>
}

export function createEditor(app: App, first: FormulaDraft): EditorModel {
  const history = signal<History<FormulaDraft>>(startHistory(first))
  const draft = computed(() => history.value.now)
  const open = signal<string | null>(null)
  const tried = signal(false)
  const refusal = signal<string | null>(null)
  const saving = signal(false)
  const unit = signal<'%' | 'g'>('%')
  const sums = signal<ReadonlyMap<string, number>>(new Map())
  const newId = () => app.ids.next()
  const mark = () => app.settings.decimalMark.value
  const { world, options } = createWorld(app, draft, sums)
  const read = computed(() => readDraft(draft.value, world.value, 1))
  const nameOf = (id: string) => app.catalogue.materials.value.get(id)?.name ?? null

  const show = (next: History<FormulaDraft>) => {
    if (next.now !== history.value.now) {
      refusal.value = null
      void app.drafts.write(draftKey(first.id), JSON.stringify(next.now))
    }
    history.value = next
  }
  const put = (next: FormulaDraft, run: string | null = null) => {
    if (next !== draft.value) show(record(history.value, next, run))
  }
  const putAndOpen = (added: { draft: FormulaDraft; id: string }) => {
    put(added.draft)
    open.value = added.id
  }
  const settle = async () => {
    const before = history.value
    const settled = await settleDraft(before.now, world.value, mark())
    // Typed on meanwhile: those sums are worked out when that field is left.
    if (history.value !== before) return
    show(endRun(settled === before.now ? before : record(before, settled, before.run)))
  }
  const learnSums = async (id: string) => {
    const line = draft.value.phases.flatMap(({ lines }) => lines).find((each) => each.id === id)
    const fresh = line === undefined ? [] : sumsIn(line.values).filter((sum) => !sums.value.has(sum))
    if (fresh.length > 0) sums.value = new Map([...sums.value, ...(await worthOfSums(fresh))])
  }

  const save = async (): Promise<boolean> => {
    if (saving.value) return false
    saving.value = true
    try {
      await settle()
      tried.value = true
      const done = read.value
      refusal.value = done.ok ? null : unreadSentence(done.refusal)
      if (!done.ok || checkRevision(done.value.revision, nameOf).length > 0) return false
      refusal.value = await storeRevision(app, draft.value, done.value)
      return refusal.value === null
    } finally {
      saving.value = false
    }
  }

  return {
    draft,
    options,
    names: computed(() => ({ materials: labelsOf(options.value.materials), steps: labelsOf(options.value.steps) })),
    world,
    open,
    refusal,
    saving,
    unit,
    setUnit: (next) => {
      unit.value = next
    },
    total: computed(() => totalOf(draft.value, world.value)),
    fieldErrors: computed(() => sentencesOf(draftErrors(draft.value, world.value), tried.value)),
    revision: computed(() => (read.value.ok ? read.value.value : null)),
    problems: computed(() =>
      read.value.ok ? checkRevision(read.value.value.revision, nameOf).map((problem) => formSentenceOf(problem)) : [],
    ),
    canUndo: computed(() => history.value.past !== null),
    canRedo: computed(() => history.value.future !== null),
    undo: () => show(undo(history.value)),
    redo: () => show(redo(history.value)),
    toggle: (id) => {
      open.value = open.value === id ? null : id
    },
    set: (id, key, text) => {
      put(setValue(draft.value, id, key, text, newId), `${id} ${key}`)
      void learnSums(id)
    },
    add: (what) =>
      putAndOpen({ phase: addPhase, vessel: addVessel, check: addCheck, limit: addLimit }[what](draft.value, newId)),
    addLine: (phase, materialId) => {
      const added = addLine(draft.value, phase, materialId ?? '', newId)
      if (materialId === undefined) putAndOpen(added)
      else put(added.draft)
      return added.id
    },
    addStep: (kind) => putAndOpen(addStep(draft.value, kind, newId)),
    addMissingSteps: () => put(withSteps(draft.value, newId)),
    remove: (id) => put(removeItem(draft.value, id)),
    move: (id, by) => put(moveItem(draft.value, id, by)),
    stepLine: (id, by) => put(stepLine(draft.value, id, by)),
    placeLine: (id, phase, at) => put(placeLine(draft.value, id, phase, at)),
    placeStep: (id, at) => put(placeStep(draft.value, id, at)),
    moveTo: (id, from, to) => put(moveItem(draft.value, id, to - from)),
    split: (id) => putAndOpen(splitLine(draft.value, id, world.value, mark(), newId)),
    settle,
    save,
    discard: () => app.drafts.write(draftKey(first.id), null),
  }
}

const labelsOf = (options: readonly FieldOption[]): ReadonlyMap<string, string> =>
  new Map(options.map(({ value, label }) => [value, label]))

/** What the texts are read with: the same objects for as long as nothing in them has changed. */
function createWorld(app: App, draft: ReadonlySignal<FormulaDraft>, sums: ReadonlySignal<ReadonlyMap<string, number>>) {
  const last: { options: Options | null; choices: Options | null } = { options: null, choices: null }
  const { materials } = app.catalogue
  const options = computed(() => {
    const used = new Set(draft.value.phases.flatMap(({ lines }) => lines.map(({ values }) => values.materialId)))
    const offered = [...materials.value.values()].filter(({ id, archived }) => !archived || used.has(id))
    const choices = offered.map(({ id, name, inci, function: does }) => ({
      value: id,
      label: name,
      sub: inci.map((part) => part.name).join(', ') || does,
    }))
    last.options = sameOptions(last.options, optionsOf(draft.value, choices))
    return last.options
  })
  const sizeUg = computed(() => usualSizeOf(draft.value))
  const choices = computed(() => {
    last.choices = sameChoices(last.choices, options.value)
    return last.choices
  })
  const world = computed<ReadWorld>(() => ({ options: choices.value, sizeUg: sizeUg.value, sums: sums.value }))
  return { world, options }
}
