import * as v from 'valibot'
import type { Balance, KeptVessel, Lot, Material, Person } from '../catalogue'
import {
  aDate,
  aFraction,
  aMass,
  aMassChange,
  aMoment,
  anId,
  aSwitch,
  aTemperature,
  listOf,
  numberBetween,
  oneOf,
  prose,
  rangeOf,
  someMass,
  words,
} from './pieces'

export const materialSchema: v.GenericSchema<unknown, Material> = v.object({
  id: anId,
  name: words(),
  inci: listOf(v.object({ name: words(), fraction: aFraction }), 60),
  function: prose(200),
  form: v.exactOptional(oneOf('liquid', 'powder', 'solid', 'paste', 'solution')),
  densityGPerMl: v.exactOptional(numberBetween(0.01, 25)),
  activeMatter: v.exactOptional(
    v.object({
      fraction: aFraction,
      class: oneOf('anionic', 'amphoteric', 'non-ionic', 'cationic surfactant', 'cationic polymer'),
    }),
  ),
  useLevel: v.exactOptional(rangeOf(aFraction)),
  phWindow: v.exactOptional(rangeOf(numberBetween(0, 14))),
  maxTemperatureC: v.exactOptional(aTemperature),
  volatile: v.exactOptional(aSwitch),
  hazards: v.exactOptional(
    v.object({
      caution: words(300),
      kind: oneOf('dust', 'caustic', 'acid', 'hot', 'flammable', 'sensitiser', 'slippery', 'other'),
      statements: listOf(words(300), 40),
      wear: listOf(words(80), 20),
    }),
  ),
  costPerKg: v.exactOptional(numberBetween(0, 1e7)),
  reorderAtUg: v.exactOptional(aMass),
  allergens: v.exactOptional(listOf(words(), 100)),
  allergenParts: v.exactOptional(listOf(v.object({ name: words(), fraction: aFraction }), 100)),
  hlb: v.exactOptional(numberBetween(0, 40)),
  requiredHlb: v.exactOptional(numberBetween(0, 40)),
  draft: v.exactOptional(aSwitch),
  archived: v.exactOptional(aSwitch),
})

export const lotSchema: v.GenericSchema<unknown, Lot> = v.object({
  id: anId,
  materialId: anId,
  code: words(80),
  supplier: v.exactOptional(words()),
  receivedUg: aMass,
  receivedOn: v.exactOptional(aDate),
  expires: v.exactOptional(aDate),
  retestOn: v.exactOptional(aDate),
  assay: v.exactOptional(aFraction),
  status: oneOf('released', 'quarantine', 'used-up'),
  adjustments: v.exactOptional(
    listOf(v.object({ at: aMoment, massUg: aMassChange, reason: words(), by: prose(100) }), 1000),
  ),
  madeFrom: v.exactOptional(listOf(v.object({ lot: anId, massUg: aMass }), 20)),
})

export const balanceSchema: v.GenericSchema<unknown, Balance> = v.object({
  id: anId,
  name: words(80),
  stepUg: someMass,
  capacityUg: someMass,
  repeatabilityUg: aMass,
  linearityUg: v.exactOptional(aMass),
  checkEveryHours: v.exactOptional(numberBetween(0, 24 * 365)),
  archived: v.exactOptional(aSwitch),
})

export const personSchema: v.GenericSchema<unknown, Person> = v.object({
  id: anId,
  initials: words(6),
  name: words(80),
  archived: v.exactOptional(aSwitch),
})

export const keptVesselSchema: v.GenericSchema<unknown, KeptVessel> = v.object({
  id: anId,
  name: words(80),
  tareUg: v.exactOptional(aMass),
  capacityUg: someMass,
  stirsUg: v.exactOptional(rangeOf(aMass)),
  archived: v.exactOptional(aSwitch),
})
