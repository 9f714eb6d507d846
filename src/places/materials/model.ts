import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { createForm, type FormModel } from '../../app/forms/form-model'
import type { Lot, Material } from '../../batch/catalogue'
import { isoOf } from '../../batch/instant'
import { lotSchema, materialSchema } from '../../batch/schemas/catalogue'
import { readDocument } from '../../batch/schemas/read-document'
import type { Micrograms } from '../../trade/mass'
import { adjustFields, checkMaterial, lotFields, materialFields } from './fields'

/** Materials and their lots, with what is on hand of each. */
export interface MaterialsModel {
  readonly search: ReadonlySignal<string>
  readonly setSearch: (text: string) => void
  readonly materials: ReadonlySignal<readonly MaterialRow[]>
  /** By lot; empty until it has been read. */
  readonly onHand: ReadonlySignal<ReadonlyMap<string, Micrograms>>
  readonly readOnHand: () => Promise<void>
  readonly lotsOf: (materialId: string) => readonly LotRow[]
}

export interface MaterialRow {
  readonly material: Material
  readonly onHandUg: Micrograms
  readonly lots: number
  readonly expired: number
}

export interface LotRow {
  readonly lot: Lot
  readonly onHandUg: Micrograms | null
  readonly mark: LotMark
}

export type LotMark = 'good' | 'expired' | 'quarantine' | 'used-up' | 'empty'

export function createMaterialsModel(app: App): MaterialsModel {
  const search = signal('')
  const onHand = signal<ReadonlyMap<string, Micrograms>>(new Map())
  const { materials, lots } = app.catalogue
  const today = computed(() => isoOf(app.nowMs.value, app.clock.offsetMinutes()).slice(0, 10))
  const row = (lot: Lot): LotRow => {
    const onHandUg = onHand.value.get(lot.id) ?? null
    return { lot, onHandUg, mark: markOf(lot, onHandUg, today.value) }
  }
  const rows = computed(() => [...lots.value.values()].map(row))
  const lotsOf = (materialId: string) => rows.value.filter(({ lot }) => lot.materialId === materialId)
  return {
    search,
    onHand,
    setSearch: (text) => {
      search.value = text
    },
    readOnHand: async () => {
      onHand.value = await app.catalogue.onHand()
    },
    materials: computed(() => {
      const wanted = search.value.trim().toLowerCase()
      return [...materials.value.values()]
        .filter((material) => textOf(material).includes(wanted))
        .map((material) => {
          const own = lotsOf(material.id)
          const usable = own.filter(({ mark }) => mark === 'good')
          return {
            material,
            onHandUg: usable.reduce((sum, { onHandUg }) => sum + (onHandUg ?? 0), 0),
            lots: usable.length,
            expired: own.filter(({ mark }) => mark === 'expired').length,
          }
        })
    }),
    // The lot that runs out first is used first, so it is shown first.
    lotsOf: (materialId) =>
      lotsOf(materialId).toSorted((a, b) => (a.lot.expires ?? '9').localeCompare(b.lot.expires ?? '9')),
  }
}

/** The form of a material; a new one where there is none of that id. */
export function materialForm(app: App, id: string): FormModel {
  const here = app.catalogue.materials.value.get(id)
  return createForm(app, {
    specs: materialFields,
    document: here ?? { id },
    draft: `material:${id}`,
    check: checkMaterial,
    write: async (typed) => {
      const read = readDocument(materialSchema, withHazardLists(withOpenEnds(typed)))
      return read.ok ? app.catalogue.save('material', read.value) : sentenceAt(read.refusal)
    },
  })
}

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

function markOf(lot: Lot, onHandUg: Micrograms | null, today: string): LotMark {
  if (lot.status !== 'released') return lot.status
  if (lot.expires !== undefined && lot.expires < today) return 'expired'
  return onHandUg !== null && onHandUg <= 0 ? 'empty' : 'good'
}

const textOf = ({ name, inci, function: does }: Material): string =>
  `${name} ${does} ${inci.map((part) => part.name).join(' ')}`.toLowerCase()

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
