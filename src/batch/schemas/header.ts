import * as v from 'valibot'
import type { BatchHeader } from '../header'
import { balanceSchema, lotSchema, materialSchema, personSchema } from './catalogue'
import { revisionSchema } from './formula'
import {
  aMass,
  anId,
  aTemperature,
  countUpTo,
  listOf,
  numberBetween,
  oneOf,
  prose,
  rangeOf,
  someMass,
  words,
} from './pieces'

export const vesselSchema = v.object({
  id: anId,
  name: words(80),
  kind: oneOf('vessel', 'cup'),
  tareUg: v.exactOptional(aMass),
  standsIn: v.exactOptional(prose(200)),
  capacityUg: v.exactOptional(aMass),
  stirsUg: v.exactOptional(rangeOf(aMass)),
  openLifeMinutes: v.exactOptional(numberBetween(0, 1e6)),
  holds: v.exactOptional(prose(200)),
})

export const headerSchema: v.GenericSchema<unknown, BatchHeader> = v.object({
  id: anId,
  code: words(80),
  shortName: words(80),
  formulaId: anId,
  formulaCode: words(80),
  formulaName: words(),
  contact: oneOf('rinse-off', 'leave-on'),
  revision: revisionSchema,
  sizeUg: someMass,
  mode: oneOf('as-you-go', 'weigh-up-first'),
  vessels: listOf(vesselSchema, 200),
  materials: listOf(materialSchema, 1000),
  lots: listOf(v.object({ line: anId, lots: listOf(lotSchema, 200) }), 1000),
  balances: listOf(balanceSchema, 200),
  balanceOfLine: listOf(v.object({ line: anId, balance: anId }), 1000),
  people: v.object({
    performs: personSchema,
    checks: v.exactOptional(personSchema),
    others: listOf(personSchema, 500),
  }),
  kept: listOf(v.object({ code: words(80), about: prose(200), reason: prose() }), 2000),
  ambientC: v.exactOptional(aTemperature),
  premixes: v.exactOptional(
    listOf(v.object({ line: anId, into: anId, oneIn: countUpTo(1000), materialId: anId }), 200),
  ),
})
