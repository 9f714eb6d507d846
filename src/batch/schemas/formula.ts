import * as v from 'valibot'
import type { Formula, Revision } from '../formula'
import { aProperty, aScale } from './how-read'
import {
  aFraction,
  aMoment,
  anId,
  aSwitch,
  countUpTo,
  limits,
  listOf,
  numberBetween,
  oneOf,
  prose,
  rangeOf,
  someMass,
  words,
} from './pieces'
import { stepSchema } from './step'

const portion = v.union(
  [v.object({ step: anId, fraction: aFraction }), v.object({ step: anId, rest: v.literal(true) })],
  'a portion: a step with a fraction, or with rest: true',
)

const amount = v.variant(
  'kind',
  [
    v.object({ kind: v.literal('fraction'), fraction: aFraction }),
    v.object({ kind: v.literal('qs'), portions: listOf(portion, 20), heldBack: v.exactOptional(aFraction) }),
    v.object({ kind: v.literal('as-needed'), expected: aFraction, min: aFraction, max: aFraction }),
  ],
  'an amount: fraction, qs or as-needed',
)

const tolerance = v.union(
  [v.object({ relative: aFraction }), v.object({ absoluteUg: someMass })],
  'a tolerance: relative or absoluteUg',
)

const line = v.object({
  id: anId,
  materialId: anId,
  amount,
  tolerance: v.exactOptional(tolerance),
  range: v.exactOptional(rangeOf(aFraction)),
  fixedOrder: v.exactOptional(aSwitch),
  locksAfter: v.exactOptional(anId),
  assayAssumed: v.exactOptional(aFraction),
})

const basis = v.variant(
  'kind',
  [v.object({ kind: v.literal('neat') }), v.object({ kind: v.literal('dilution'), fraction: aFraction })],
  'a basis: neat or dilution',
)

const check = v.object({
  id: anId,
  property: aProperty,
  label: words(),
  unit: v.exactOptional(words(40)),
  method: v.exactOptional(prose(500)),
  basis: v.exactOptional(basis),
  limits: v.exactOptional(limits),
  expected: v.exactOptional(prose(500)),
  scale: v.exactOptional(aScale),
  when: oneOf('in-process', 'after-rest'),
})

const vesselNeed = v.object({
  id: anId,
  name: words(80),
  kind: oneOf('vessel', 'cup'),
  roomFactor: v.exactOptional(numberBetween(1, 100)),
  holds: v.exactOptional(prose(300)),
  openLifeMinutes: v.exactOptional(numberBetween(0, 60 * 24 * 30)),
})

const sharedLimit = v.object({
  id: anId,
  name: words(),
  of: v.variant(
    'kind',
    [
      v.object({ kind: v.literal('inci'), name: words() }),
      v.object({
        kind: v.literal('active'),
        class: oneOf('anionic', 'amphoteric', 'non-ionic', 'cationic surfactant', 'cationic polymer'),
      }),
      v.object({ kind: v.literal('function'), function: words() }),
    ],
    'what the limit is of: inci, active or function',
  ),
  min: v.exactOptional(aFraction),
  max: v.exactOptional(aFraction),
})

export const revisionSchema: v.GenericSchema<unknown, Revision> = v.object({
  number: countUpTo(9999),
  note: v.exactOptional(prose()),
  approvedBy: v.exactOptional(words(80)),
  approvedAt: v.exactOptional(aMoment),
  usualSizeUg: someMass,
  phases: listOf(v.object({ letter: words(4), name: words(80), lines: listOf(line, 200) }), 26),
  procedure: listOf(stepSchema, 500),
  specification: listOf(check, 50),
  vessels: listOf(vesselNeed, 40),
  lossAllowance: v.exactOptional(aFraction),
  restHours: v.exactOptional(numberBetween(0, 24 * 365)),
  readingAgeMinutes: v.exactOptional(numberBetween(1, 60 * 24)),
  preflight: listOf(words(300), 60),
  sharedLimits: v.exactOptional(listOf(sharedLimit, 50)),
})

export const formulaSchema: v.GenericSchema<unknown, Formula> = v.object({
  id: anId,
  code: words(40),
  name: words(),
  nickname: words(40),
  contact: oneOf('rinse-off', 'leave-on'),
  revisions: v.pipe(listOf(revisionSchema, 500), v.minLength(1, 'at least one revision')),
  archived: v.exactOptional(aSwitch),
})
