import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { readFields } from '../../app/forms/read-fields'
import { formulaFromTable, type ImportHead } from '../../app/import/formula-from-table'
import { indexOf, type Match, matchMaterial, plainName } from '../../app/import/match-material'
import { saveImport } from '../../app/import/save-import'
import { type ColumnRole, type Mapping, withRole } from '../../app/import/table/mapping'
import { readSheetFile } from '../../app/import/table/read-file'
import { readTable } from '../../app/import/table/read-table'
import { readTextSheets } from '../../app/import/table/read-text'
import { cellKey, type RowKind, type Settled } from '../../app/import/table/settled'
import type { Sheet, SheetRefusal } from '../../app/import/table/sheet'
import type { ReadLine, ReadTable } from '../../app/import/table/understood'
import { formSentenceOf } from '../../app/refusals/forms'
import { saveSentence, sheetSentence } from '../../app/refusals/forms-spreadsheet'
import type { Result } from '../../trade/result'
import { headFields } from './fields'
import { beginWith, type KeptImport, keptFrom, newMaterial, stateText, withSheet } from './spreadsheet-kept'

/** Bringing a formula in from a spreadsheet. Nothing is saved before `save`; everything typed is kept at once. */
export interface SpreadsheetModel {
  /** False until storage was asked for one that was begun. */
  readonly loaded: ReadonlySignal<boolean>
  readonly kept: ReadonlySignal<KeptImport | null>
  readonly table: ReadonlySignal<ReadTable | null>
  /** Why the last paste or file gave no table, or the last save did not happen. */
  readonly refusal: ReadonlySignal<string | null>
  readonly busy: ReadonlySignal<boolean>
  readonly headErrors: ReadonlySignal<Readonly<Record<string, string>>>
  /** Rows that are still to be settled, by number from 0. */
  readonly open: ReadonlySignal<readonly number[]>
  /** How many things stand against saving. */
  readonly toSettle: ReadonlySignal<number>
  readonly load: () => Promise<void>
  readonly paste: (text: string) => Promise<void>
  readonly takeFile: (file: File) => Promise<void>
  readonly chooseSheet: (chosen: number) => void
  readonly setRole: (column: number, role: ColumnRole) => void
  readonly setMapping: (part: Partial<Pick<Mapping, 'heading' | 'mark' | 'scale'>>) => void
  readonly setCell: (row: number, column: number, text: string) => void
  /** Null takes the row for what was guessed. */
  readonly setKind: (row: number, kind: RowKind | null) => void
  readonly settle: (part: Partial<Pick<Settled, 'fill' | 'total'>>) => void
  /** What a line may be, and what was said it is. */
  readonly matchOf: (line: ReadLine) => { readonly match: Match; readonly said: string | undefined }
  /** The id of a material, `new`, or null to ask again. */
  readonly say: (line: ReadLine, material: string | null) => void
  readonly setHead: (key: string, text: string) => void
  /** The id of the formula once all of it is saved. */
  readonly save: () => Promise<string | null>
  readonly leave: () => Promise<void>
}

const draftKey = 'spreadsheet'
const cellsKey = 'spreadsheet-cells'

/** What a sheet does not say of a formula. */
export const importHeadFields = headFields.filter(({ key }) =>
  ['name', 'code', 'nickname', 'contact', 'usualSizeUg'].includes(key),
)

export function createSpreadsheet(app: App): SpreadsheetModel {
  const loaded = signal(false)
  const kept = signal<KeptImport | null>(null)
  const refusal = signal<string | null>(null)
  const busy = signal(false)
  const mark = () => app.settings.decimalMark.value
  const index = computed(() => indexOf([...app.catalogue.materials.value.values()].filter((each) => !each.archived)))
  const sheet = computed(() => kept.value?.sheets[kept.value.chosen] ?? null)
  const table = computed(() =>
    kept.value && sheet.value ? readTable(sheet.value, kept.value.mapping, kept.value.settled) : null,
  )
  // Found once for each name, and anew where the materials of the house have changed.
  const found = computed(() => ({ index: index.value, matches: new Map<string, Match>() }))
  const matchFor = (line: ReadLine): Match => {
    const { index: here, matches } = found.value
    const key = `${line.name}\n${line.inci}`
    const known = matches.get(key) ?? matchMaterial(line, here)
    matches.set(key, known)
    return known
  }
  const matchOf = (line: ReadLine) => {
    const key = plainName(line.name)
    const said = kept.value?.materials[key]
    const isThere = said === undefined || said === newMaterial || app.catalogue.materials.value.has(said)
    return { match: matchFor(line), said: isThere ? said : undefined }
  }
  const isAsked = (line: ReadLine) => {
    const { match, said } = matchOf(line)
    return match.kind === 'near' && said === undefined
  }
  const open = computed(() =>
    (table.value?.rows ?? [])
      .filter(({ line, problems }) => problems.length > 0 || (line !== null && isAsked(line)))
      .map(({ row }) => row),
  )
  const head = computed(() => readFields(importHeadFields, kept.value?.head ?? {}))
  const toSettle = computed(() => {
    const fields = head.value.ok ? 0 : Object.keys(head.value.refusal).length
    return open.value.length + (table.value?.problems.length ?? 0) + fields
  })

  const put = async (next: KeptImport | null): Promise<void> => {
    const isSameFile = next !== null && next.sheets === kept.value?.sheets
    kept.value = next
    refusal.value = null
    if (!isSameFile) await app.drafts.write(cellsKey, next === null ? null : JSON.stringify(next.sheets))
    // What stands now: more may have been settled while the cells were written.
    await app.drafts.write(draftKey, kept.value === null ? null : stateText(kept.value))
  }
  const change = (part: Partial<KeptImport>) => {
    if (kept.value) void put({ ...kept.value, ...part })
  }
  const settle = (part: Partial<Settled>) => {
    if (kept.value) change({ settled: { ...kept.value.settled, ...part } })
  }
  const take = async (reading: Promise<Result<readonly Sheet[], SheetRefusal>>): Promise<void> => {
    busy.value = true
    try {
      const read = await reading
      if (read.ok) await put(beginWith(read.value, mark()))
      else refusal.value = sheetSentence(read.refusal)
    } finally {
      busy.value = false
    }
  }
  const idOf = (ids: Record<string, string>) => (thing: string) => {
    ids[thing] ??= app.ids.next()
    return ids[thing]
  }
  const materialOf = (line: ReadLine): string | null => {
    const { match, said } = matchOf(line)
    if (said !== undefined) return said === newMaterial ? null : said
    return match.kind === 'here' ? match.material.id : null
  }

  return {
    loaded,
    kept,
    table,
    refusal,
    busy,
    open,
    toSettle,
    matchOf,
    headErrors: computed(() =>
      head.value.ok
        ? {}
        : Object.fromEntries(Object.entries(head.value.refusal).map(([key, each]) => [key, formSentenceOf(each)])),
    ),
    load: async () => {
      kept.value = keptFrom(await app.drafts.read(cellsKey), await app.drafts.read(draftKey))
      loaded.value = true
    },
    paste: (text) => take(readTextSheets(text, 'Pasted')),
    takeFile: (file) => take(readSheetFile(file)),
    chooseSheet: (chosen) => kept.value && void put(withSheet(kept.value, chosen, mark())),
    setRole: (column, role) => kept.value && change({ mapping: withRole(kept.value.mapping, column, role) }),
    setMapping: (part) => kept.value && change({ mapping: { ...kept.value.mapping, ...part, isOwn: false } }),
    setCell: (row, column, text) => settle({ cells: { ...kept.value?.settled.cells, [cellKey(row, column)]: text } }),
    setKind: (row, kind) => {
      const { [row]: _guessed, ...others } = kept.value?.settled.kinds ?? {}
      settle({ kinds: kind === null ? others : { ...others, [row]: kind } })
    },
    settle,
    say: (line, material) => {
      const { [plainName(line.name)]: _before, ...others } = kept.value?.materials ?? {}
      change({ materials: material === null ? others : { ...others, [plainName(line.name)]: material } })
    },
    setHead: (key, text) => kept.value && change({ head: { ...kept.value.head, [key]: text } }),
    save: async () => {
      if (busy.value || kept.value === null || table.value === null || !head.value.ok || toSettle.value > 0) return null
      busy.value = true
      try {
        const ids = { ...kept.value.ids }
        // Read through headFields, which give these five.
        const made = formulaFromTable({
          table: table.value,
          head: head.value.value as unknown as ImportHead,
          materialOf,
          idOf: idOf(ids),
        })
        await put({ ...kept.value, ids })
        const saved = await saveImport(app, made)
        if (!saved.ok) {
          refusal.value = saveSentence(saved.refusal)
          return null
        }
        await put(null)
        return saved.value
      } finally {
        busy.value = false
      }
    },
    leave: () => put(null),
  }
}
