import * as v from 'valibot'
import type { Balance, KeptVessel, Lot, Material, Person } from '../catalogue'
import type { Formula } from '../formula'
import { balanceSchema, keptVesselSchema, lotSchema, materialSchema, personSchema } from './catalogue'
import { formulaSchema } from './formula'
import { listOf } from './pieces'

/** A file of catalogue documents. Any of the lists may be missing in the file; it is empty here. */
export interface CatalogueFile {
  readonly people: readonly Person[]
  readonly balances: readonly Balance[]
  readonly vessels: readonly KeptVessel[]
  readonly materials: readonly Material[]
  readonly lots: readonly Lot[]
  readonly formulas: readonly Formula[]
}

/** The names by which such a file says what it is, and the newest version that can be read. */
export const catalogueFormats: readonly string[] = ['pannikin-catalogue', 'pannikin-formulas']
export const catalogueVersion = 1

function listOrNone<T>(item: v.GenericSchema<unknown, T>, most: number) {
  return v.optional(listOf(item, most), [])
}

export const catalogueFileSchema: v.GenericSchema<unknown, CatalogueFile> = v.object(
  {
    people: listOrNone(personSchema, 500),
    balances: listOrNone(balanceSchema, 500),
    vessels: listOrNone(keptVesselSchema, 2000),
    materials: listOrNone(materialSchema, 10_000),
    lots: listOrNone(lotSchema, 20_000),
    formulas: listOrNone(formulaSchema, 2000),
  },
  'an object with lists',
)
