import { type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { fieldsCsv, readFieldsCsv } from '../../app/import/fields-csv'
import { importDocuments } from '../../app/import/import-documents'
import { sameDocument } from '../../app/import/merge'
import { materialsFile } from '../../app/import/write-documents'
import { csvSentence } from '../../app/refusals/forms-csv'
import { importSentences } from '../../app/refusals/forms-import'
import { sayFrom } from '../../app/refusals/sentences'
import type { Material } from '../../batch/catalogue'
import { accept, type Result, refuse } from '../../trade/result'
import { materialFields } from './fields'
import { readMaterial } from './model'

/** A table of materials on its way in. Nothing is changed before `apply`. */
export type TableState =
  | { readonly step: 'idle' | 'busy' }
  | { readonly step: 'preview'; readonly fresh: number; readonly changed: number; readonly same: number }
  | { readonly step: 'done' | 'refused'; readonly text: string }

export interface MaterialsTable {
  readonly state: ReadonlySignal<TableState>
  readonly take: (file: File) => Promise<void>
  readonly apply: () => Promise<void>
  readonly leave: () => void
}

/** Larger than any house's list of materials. */
const largestBytes = 5_000_000

/** A table may leave open what a form asks for: a material that came with a formula has no more than its name. */
const specs = materialFields.map((spec) => (spec.key === 'name' ? spec : { ...spec, optional: true }))

export const materialsCsv = (materials: readonly Material[], mark: '.' | ','): Promise<string> =>
  fieldsCsv(specs, materials, mark)

/** The materials of such a table, or the sentence that says which cell is wrong. */
export async function readMaterialsCsv(
  text: string,
  here: ReadonlyMap<string, Material>,
): Promise<Result<readonly Material[], string>> {
  const read = await readFieldsCsv(text, specs, here)
  if (!read.ok) return refuse(csvSentence(read.refusal))
  const materials: Material[] = []
  for (const [row, typed] of read.value.entries()) {
    const material = readMaterial({ function: '', inci: [], ...typed })
    if (!material.ok)
      return refuse(
        `Material ${row + 1}: ${material.refusal.path} should be ${material.refusal.wanted}. Nothing came in.`,
      )
    materials.push(material.value)
  }
  return accept(materials)
}

export function createMaterialsTable(app: App): MaterialsTable {
  const state = signal<TableState>({ step: 'idle' })
  let ready: readonly Material[] = []
  return {
    state,
    take: async (file) => {
      state.value = { step: 'busy' }
      if (file.size > largestBytes) {
        state.value = { step: 'refused', text: 'The file is larger than 5 MB, and was not read.' }
        return
      }
      const here = app.catalogue.materials.value
      const read = await readMaterialsCsv(await file.text(), here)
      if (!read.ok) {
        state.value = { step: 'refused', text: read.refusal }
        return
      }
      ready = read.value
      const known = read.value.filter(({ id }) => here.has(id))
      const same = known.filter((each) => sameDocument(each, here.get(each.id) ?? {})).length
      state.value = { step: 'preview', fresh: read.value.length - known.length, changed: known.length - same, same }
    },
    apply: async () => {
      state.value = { step: 'busy' }
      const answer = await importDocuments(app, new Blob([materialsFile(ready)]))
      state.value = answer.ok
        ? {
            step: 'done',
            text: `${answer.value.fresh} new, ${answer.value.changed} changed, ${answer.value.same} here already.`,
          }
        : { step: 'refused', text: sayFrom(importSentences, answer.refusal) }
    },
    leave: () => {
      ready = []
      state.value = { step: 'idle' }
    },
  }
}
