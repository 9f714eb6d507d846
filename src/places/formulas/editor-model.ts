import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { isSaidWhileTyping } from '../../app/forms/read-fields'
import { formSentenceOf } from '../../app/refusals/forms'
import type { Formula } from '../../batch/formula'
import { isoOf } from '../../batch/instant'
import { checkRevision } from '../../batch/schemas/check-revision'
import type { FormulaDraft } from './draft'
import {
  addCheck,
  addLine,
  addPhase,
  addStep,
  addVessel,
  moveItem,
  moveToPhase,
  removeItem,
  setValue,
  withSteps,
} from './draft-edit'
import { draftKey } from './draft-keeping'
import { type DraftErrors, optionsOf, type ReadDraft, readDraft, settleDraft } from './draft-read'
import type { Options } from './fields'
import { type Total, totalOf } from './total'

/** A formula while it is changed. Every change is kept at once; Save makes a revision of it or says what is missing. */
export interface EditorModel {
  readonly draft: ReadonlySignal<FormulaDraft>
  readonly options: ReadonlySignal<Options>
  readonly total: ReadonlySignal<Total>
  /** The part whose form is open. */
  readonly open: ReadonlySignal<string | null>
  /** Sentences by part and field; of what is still empty only once Save was tried. */
  readonly fieldErrors: ReadonlySignal<Readonly<Record<string, Readonly<Record<string, string>>>>>
  /** What keeps the formula from being weighed, as sentences. */
  readonly problems: ReadonlySignal<readonly string[]>
  /** Why the last Save did not happen. */
  readonly refusal: ReadonlySignal<string | null>
  readonly saving: ReadonlySignal<boolean>
  readonly toggle: (id: string) => void
  readonly set: (id: string, key: string, text: string) => void
  readonly add: (what: 'phase' | 'vessel' | 'check') => void
  readonly addLine: (phase: string) => void
  readonly addStep: (kind: string) => void
  readonly addMissingSteps: () => void
  readonly remove: (id: string) => void
  readonly move: (id: string, by: -1 | 1) => void
  readonly moveToPhase: (line: string, phase: string) => void
  readonly settle: () => Promise<void>
  /** True once the revision stands in the catalogue. */
  readonly save: () => Promise<boolean>
  readonly discard: () => Promise<void>
}

export function createEditor(app: App, first: FormulaDraft): EditorModel {
  const draft = signal(first)
  const open = signal<string | null>(null)
  const tried = signal(false)
  const refusal = signal<string | null>(null)
  const saving = signal(false)
  const newId = () => app.ids.next()
  const { materials } = app.catalogue
  const options = computed(() =>
    optionsOf(
      draft.value,
      [...materials.value.values()]
        .filter((each) => !each.archived)
        .map(({ id, name }) => ({ value: id, label: name })),
    ),
  )
  const read = computed(() => readDraft(draft.value, options.value, 1))
  const nameOf = (id: string) => materials.value.get(id)?.name ?? null

  const put = (next: FormulaDraft) => {
    if (next === draft.value) return
    draft.value = next
    refusal.value = null
    void app.drafts.write(draftKey(first.id), JSON.stringify(next))
  }
  const putAndOpen = (added: { draft: FormulaDraft; id: string }) => {
    put(added.draft)
    open.value = added.id
  }
  const settle = async () => {
    const before = draft.value
    const settled = await settleDraft(before, options.value, app.settings.decimalMark.value)
    // Typed on meanwhile: those sums are worked out when that field is left.
    if (draft.value === before && JSON.stringify(settled) !== JSON.stringify(before)) put(settled)
  }

  const store = async ({ head, revision }: ReadDraft): Promise<boolean> => {
    const here = app.catalogue.formulas.value.get(first.id)
    const number = await numberFor(app, here, draft.value.from)
    const at = isoOf(app.clock.nowMs(), app.clock.offsetMinutes())
    const approved = revision.approvedBy === undefined ? {} : { approvedAt: at }
    const others = here?.revisions.filter((each) => each.number !== number) ?? []
    const formula: Formula = {
      ...(here ?? {}),
      ...head,
      id: first.id,
      revisions: [...others, { ...revision, ...approved, number }],
    }
    const refused = await app.catalogue.save('formula', formula, revision.note)
    if (refused !== null) {
      refusal.value = formSentenceOf(refused)
      return false
    }
    await app.drafts.write(draftKey(first.id), null)
    return true
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
      return await store(done.value)
    } finally {
      saving.value = false
    }
  }

  return {
    draft,
    options,
    open,
    refusal,
    saving,
    total: computed(() => totalOf(draft.value)),
    fieldErrors: computed(() => (read.value.ok ? {} : sentencesByField(read.value.refusal, tried.value))),
    problems: computed(() =>
      read.value.ok ? checkRevision(read.value.value.revision, nameOf).map((problem) => formSentenceOf(problem)) : [],
    ),
    toggle: (id) => {
      open.value = open.value === id ? null : id
    },
    set: (id, key, text) => put(setValue(draft.value, id, key, text, newId)),
    add: (what) => putAndOpen({ phase: addPhase, vessel: addVessel, check: addCheck }[what](draft.value, newId)),
    addLine: (phase) => putAndOpen(addLine(draft.value, phase, newId)),
    addStep: (kind) => putAndOpen(addStep(draft.value, kind, newId)),
    addMissingSteps: () => put(withSteps(draft.value, newId)),
    remove: (id) => put(removeItem(draft.value, id)),
    move: (id, by) => put(moveItem(draft.value, id, by)),
    moveToPhase: (line, phase) => put(moveToPhase(draft.value, line, phase)),
    settle,
    save,
    discard: () => app.drafts.write(draftKey(first.id), null),
  }
}

/** A revision that a batch has used stays as it is; so does any but the last. The change then gets the next number. */
async function numberFor(app: App, here: Formula | undefined, from: number | null): Promise<number> {
  const last = Math.max(0, ...(here?.revisions.map(({ number }) => number) ?? []))
  if (here === undefined || from !== last) return last + 1
  const used = await app.catalogue.usedRevisions(here.id)
  return used.has(last) ? last + 1 : last
}

function unreadSentence({ items, document }: DraftErrors): string {
  if (document) return `${document.path} should be ${document.wanted}.`
  const count = Object.values(items).reduce((sum, errors) => sum + Object.keys(errors).length, 0)
  return count === 1
    ? 'One field is not right yet. It is marked below.'
    : `${count} fields are not right yet. They are marked below.`
}

const sentencesByField = ({ items }: DraftErrors, all: boolean) =>
  Object.fromEntries(
    Object.entries(items).map(([id, errors]) => [
      id,
      Object.fromEntries(
        Object.entries(errors)
          .filter(([, refusal]) => all || isSaidWhileTyping(refusal))
          .map(([key, refusal]) => [key, formSentenceOf(refusal)]),
      ),
    ]),
  )
