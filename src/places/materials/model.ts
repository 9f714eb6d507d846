import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { createForm, type FormModel } from '../../app/forms/form-model'
import { formSentenceOf } from '../../app/refusals/forms'
import type { Lot, Material } from '../../batch/catalogue'
import { isoOf } from '../../batch/iso-of'
import { lotSchema, materialSchema } from '../../batch/schemas/catalogue'
import { type DocumentRefusal, readDocument } from '../../batch/schemas/read-document'
import type { Micrograms } from '../../trade/mass'
import type { Result } from '../../trade/result'
import { adjustFields, checkMaterial, lotFields, materialFields } from './fields'
import { inOrderOfUse, type LotRow, type MaterialRow, markOf, materialRow, type Use, usesOf } from './stock'

const begun = 'new-'

/** The address of a material that is begun: until it is saved, only that tells it from one that is not here. */
export const newMaterial = (id: string): string => `${begun}${id}`

/** The material that an address names, and whether it is being begun there. */
export const addressedMaterial = (address: string): { readonly id: string; readonly isNew: boolean } =>
  address.startsWith(begun) ? { id: address.slice(begun.length), isNew: true } : { id: address, isNew: false }

/** Materials and their lots, with what is on hand of each. */
export interface MaterialsModel {
  readonly search: ReadonlySignal<string>
  readonly setSearch: (text: string) => void
  readonly show: ReadonlySignal<Shown>
  readonly setShow: (show: Shown) => void
  /** How many each choice of `show` has, whatever is searched for. */
  readonly counts: ReadonlySignal<Readonly<Record<Shown, number>>>
  readonly materials: ReadonlySignal<readonly MaterialRow[]>
  /** By lot; empty until it has been read. */
  readonly onHand: ReadonlySignal<ReadonlyMap<string, Micrograms>>
  readonly readOnHand: () => Promise<void>
  readonly lotsOf: (materialId: string) => readonly LotRow[]
  readonly usesOf: (materialId: string) => readonly Use[]
  /** Released, or put back into quarantine: an entry of the lot, with its reason. */
  readonly setStatus: (lot: Lot, status: Lot['status']) => Promise<string | null>
}

/** Which part of the list is shown: all in use, those to order, those with a lot to look at, those put away. */
export type Shown = 'all' | 'order' | 'look' | 'archived'

export function createMaterialsModel(app: App): MaterialsModel {
  const search = signal('')
  const show = signal<Shown>('all')
  const onHand = signal<ReadonlyMap<string, Micrograms>>(new Map())
  const { materials, lots, formulas } = app.catalogue
  const today = computed(() => isoOf(app.nowMs.value, app.clock.offsetMinutes()).slice(0, 10))
  const row = (lot: Lot): LotRow => {
    const onHandUg = onHand.value.get(lot.id) ?? null
    return { lot, onHandUg, mark: markOf(lot, onHandUg, today.value) }
  }
  const byMaterial = computed(() => {
    const shelves = new Map<string, LotRow[]>()
    for (const lot of lots.value.values())
      shelves.set(lot.materialId, [...(shelves.get(lot.materialId) ?? []), row(lot)])
    return shelves
  })
  const lotsOf = (materialId: string) => byMaterial.value.get(materialId) ?? []
  const rows = computed(() => [...materials.value.values()].map((each) => materialRow(each, lotsOf(each.id))))
  return {
    search,
    show,
    onHand,
    setSearch: (text) => {
      search.value = text
    },
    setShow: (next) => {
      show.value = next
    },
    readOnHand: async () => {
      onHand.value = await app.catalogue.onHand()
    },
    counts: computed(() => ({
      all: rows.value.filter(isShown.all).length,
      order: rows.value.filter(isShown.order).length,
      look: rows.value.filter(isShown.look).length,
      archived: rows.value.filter(isShown.archived).length,
    })),
    materials: computed(() => {
      const wanted = search.value.trim().toLowerCase().split(/\s+/).filter(Boolean)
      return rows.value
        .filter(isShown[show.value])
        .filter(({ material }) => wanted.every((word) => textOf(material, lotsOf(material.id)).includes(word)))
    }),
    lotsOf: (materialId) => inOrderOfUse(lotsOf(materialId)),
    usesOf: (materialId) => usesOf(materialId, formulas.value.values()),
    setStatus: async (lot, status) => {
      const refused = await app.catalogue.save('lot', { ...lot, status }, statusReasons[status])
      return refused === null ? null : formSentenceOf(refused)
    },
  }
}

const isShown: Readonly<Record<Shown, (row: MaterialRow) => boolean>> = {
  all: ({ material }) => material.archived !== true,
  order: ({ material, reorder }) => reorder && material.archived !== true,
  look: ({ material, expired, waiting }) => expired + waiting > 0 && material.archived !== true,
  archived: ({ material }) => material.archived === true,
}

const statusReasons: Readonly<Record<Lot['status'], string>> = {
  released: 'released',
  quarantine: 'put in quarantine',
  'used-up': 'used up',
}

/** The form of a material; a new one where there is none of that id. */
export function materialForm(app: App, id: string): FormModel {
  const here = app.catalogue.materials.value.get(id)
  return createForm(app, {
    specs: materialFields,
    document: here ?? { id },
    draft: `material:${id}`,
    check: checkMaterial,
    write: async ({ draft: _filledInNow, ...typed }) => {
      const read = readMaterial(typed)
      return read.ok ? app.catalogue.save('material', read.value) : sentenceAt(read.refusal)
    },
  })
}

/** The material that the fields of its form make; open ends reach to the natural end, lists may be empty. */
export const readMaterial = (typed: Record<string, unknown>): Result<Material, DocumentRefusal> =>
  readDocument(materialSchema, withHazardLists(withOpenEnds(typed)))

/** The form of a lot of one material. */
export function lotForm(app: App, materialId: string, id: string): FormModel {
  const here = app.catalogue.lots.value.get(id)
  return createForm(app, {
    specs: lotFields,
    document: here ?? { id, materialId, status: 'released' },
    draft: `lot:${id}`,
    write: async (typed) => {
      const read = readDocument(lotSchema, typed)
      return read.ok ? app.catalogue.save('lot', read.value) : sentenceAt(read.refusal)
    },
  })
}

/** Stock as counted: the difference from what the books say is kept with its reason and who counted. */
export function adjustForm(app: App, lot: Lot, onHandUg: Micrograms): FormModel {
  return createForm(app, {
    specs: adjustFields,
    document: {},
    draft: `lot-count:${lot.id}`,
    write: async ({ countedUg, reason }) => {
      const at = isoOf(app.clock.nowMs(), app.clock.offsetMinutes())
      const by = app.settings.person.value?.initials ?? ''
      const adjustment = { at, massUg: Number(countedUg) - onHandUg, reason, by }
      const read = readDocument(lotSchema, { ...lot, adjustments: [...(lot.adjustments ?? []), adjustment] })
      return read.ok ? app.catalogue.save('lot', read.value, String(reason)) : sentenceAt(read.refusal)
    },
  })
}

/** Names, what it does, and the codes and suppliers of its lots. */
const textOf = ({ name, inci, function: does }: Material, lots: readonly LotRow[]): string =>
  [name, does, ...inci.map((part) => part.name), ...lots.map(({ lot }) => `${lot.code} ${lot.supplier ?? ''}`)]
    .join(' ')
    .toLowerCase()

/** A range of which one end was left open reaches to the natural end. */
function withOpenEnds({ useLevel, phWindow, ...material }: Record<string, unknown>): Record<string, unknown> {
  return {
    ...material,
    ...(useLevel === undefined ? {} : { useLevel: { min: 0, max: 1, ...(useLevel as object) } }),
    ...(phWindow === undefined ? {} : { phWindow: { min: 0, max: 14, ...(phWindow as object) } }),
  }
}

function withHazardLists({ hazards, ...material }: Record<string, unknown>): Record<string, unknown> {
  return hazards === undefined
    ? material
    : { ...material, hazards: { statements: [], wear: [], ...(hazards as object) } }
}

const sentenceAt = ({ path, wanted }: { path: string; wanted: string }): string => `${path} should be ${wanted}.`
