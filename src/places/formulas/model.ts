import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import type { Material } from '../../batch/catalogue'
import type { Formula, Revision } from '../../batch/formula'
import type { BatchSummary } from '../../batch/summary'
import { draftOf, duplicateOf, emptyDraft, type FormulaDraft } from './draft'
import { draftKey, keptDraft, keptDrafts } from './draft-keeping'

/** The formulas of the house, archived ones apart. */
export interface FormulasModel {
  readonly search: ReadonlySignal<string>
  readonly setSearch: (text: string) => void
  readonly withArchived: ReadonlySignal<boolean>
  readonly showArchived: (show: boolean) => void
  readonly formulas: ReadonlySignal<readonly Formula[]>
  readonly archivedCount: ReadonlySignal<number>
  /** New ones that were begun and not saved yet. */
  readonly begun: ReadonlySignal<readonly FormulaDraft[]>
  readonly readBegun: () => Promise<void>
  /** Begins an empty formula and opens it. */
  readonly begin: () => Promise<void>
}

export function createFormulasModel(app: App): FormulasModel {
  const search = signal('')
  const withArchived = signal(false)
  const begun = signal<readonly FormulaDraft[]>([])
  const all = computed(() => [...app.catalogue.formulas.value.values()])
  return {
    search,
    withArchived,
    begun,
    setSearch: (text) => {
      search.value = text
    },
    showArchived: (show) => {
      withArchived.value = show
    },
    formulas: computed(() => {
      const wanted = search.value.trim().toLowerCase().split(/\s+/).filter(Boolean)
      const { materials } = app.catalogue
      return all.value
        .filter((formula) => withArchived.value || formula.archived !== true)
        .filter((formula) => wanted.every((word) => wordsOf(formula, materials.value).includes(word)))
    }),
    archivedCount: computed(() => all.value.filter((formula) => formula.archived === true).length),
    readBegun: async () => {
      begun.value = (await keptDrafts(app.drafts)).filter((draft) => draft.from === null)
    },
    begin: async () => {
      const id = app.ids.next()
      await keep(
        app,
        emptyDraft(id, () => app.ids.next()),
      )
      app.go({ place: 'formulas', formula: id })
    },
  }
}

export type PageSheetName = 'scale' | 'label'

export interface Compared {
  readonly was: number
  readonly is: number
}

/** One formula: its revisions to read, or a change that was begun. */
export interface FormulaPageModel {
  /** Whether storage has been asked for a begun change. */
  readonly read: ReadonlySignal<boolean>
  readonly formula: ReadonlySignal<Formula | null>
  readonly revision: ReadonlySignal<Revision | null>
  readonly draft: ReadonlySignal<FormulaDraft | null>
  readonly used: ReadonlySignal<ReadonlySet<number>>
  readonly choose: (revision: number) => void
  /** What stands open over the page. */
  readonly sheet: ReadonlySignal<PageSheetName | null>
  readonly show: (sheet: PageSheetName | null) => void
  readonly load: () => Promise<void>
  readonly change: () => Promise<void>
  /** The numbers of the revisions that stand side by side; null while one is read. */
  readonly compared: ReadonlySignal<Compared | null>
  readonly compare: (compared: Compared | null) => void
  /** Batches of this formula, the newest first: each can become its next revision. */
  readonly batches: ReadonlySignal<readonly BatchSummary[]>
  readonly duplicate: () => Promise<void>
  readonly archive: (archived: boolean) => Promise<void>
  /** Back to reading, after a save or when a change was left. */
  readonly leave: () => void
}

export function createFormulaPage(app: App, id: string): FormulaPageModel {
  const read = signal(false)
  const draft = signal<FormulaDraft | null>(null)
  const used = signal<ReadonlySet<number>>(new Set())
  const chosen = signal<number | null>(null)
  const sheet = signal<PageSheetName | null>(null)
  const compared = signal<Compared | null>(null)
  const batches = signal<readonly BatchSummary[]>([])
  const formula = computed(() => app.catalogue.formulas.value.get(id) ?? null)
  const revision = computed(() => {
    const revisions = formula.value?.revisions ?? []
    return revisions.find(({ number }) => number === chosen.value) ?? revisions.at(-1) ?? null
  })
  const draftNow = (): FormulaDraft | null =>
    formula.value && revision.value ? draftOf(formula.value, revision.value, app.settings.decimalMark.value) : null
  return {
    read,
    draft,
    used,
    formula,
    revision,
    sheet,
    show: (name) => {
      sheet.value = name
    },
    compared,
    batches,
    compare: (next) => {
      compared.value = next
    },
    choose: (number) => {
      chosen.value = number
    },
    load: async () => {
      draft.value = await keptDraft(app.drafts, id)
      read.value = true
      used.value = await app.catalogue.usedRevisions(id)
      const finished = await app.batches.finished(recentBatches)
      batches.value = finished.filter((batch) => batch.formulaId === id)
    },
    change: async () => {
      draft.value = draftNow()
    },
    duplicate: async () => {
      const copied = draftNow()
      if (copied === null) return
      const copy = duplicateOf(copied, app.ids.next())
      await keep(app, copy)
      app.go({ place: 'formulas', formula: copy.id })
    },
    archive: async (archived) => {
      if (formula.value) await app.catalogue.save('formula', { ...formula.value, archived })
    },
    leave: () => {
      chosen.value = null
      draft.value = null
      if (formula.value === null) app.go({ place: 'formulas' })
    },
  }
}

/** Name and code, and the bench and INCI names of what its current revision is made of. */
function wordsOf({ code, name, nickname, revisions }: Formula, materials: ReadonlyMap<string, Material>): string {
  const lines = revisions.at(-1)?.phases.flatMap((phase) => phase.lines) ?? []
  const of = lines.flatMap(({ materialId }) => {
    const material = materials.get(materialId)
    return material === undefined ? [] : [material.name, ...material.inci.map((part) => part.name)]
  })
  return [code, name, nickname, ...of].join(' ').toLowerCase()
}

/** So many finished batches are looked through for those of a formula. */
const recentBatches = 200

const keep = (app: App, draft: FormulaDraft): Promise<void> =>
  app.drafts.write(draftKey(draft.id), JSON.stringify(draft))
