import * as v from 'valibot'
import { documentKind } from '../document'
import type { Event } from '../event'
import { type Bodies, isKnown } from '../kinds'
import { isOfPerson, type PersonBodies, type PersonKind } from '../person-trail'
import { balanceSchema, keptVesselSchema, lotSchema, materialSchema, personSchema } from './catalogue'
import { formulaSchema } from './formula'
import { headerSchema } from './header'
import { aProperty, howReadSchema } from './how-read'
import {
  aBasis,
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
  someMass,
  words,
} from './pieces'
import { stabilityPlanSchema } from './stability'

const aMs = numberBetween(0, 1e15)
const aReason = prose(2000)
const someHex = v.pipe(v.string(), v.regex(/^[0-9a-f]{16,128}$/))
const anInstrument = v.variant('kind', [
  v.object({ kind: v.literal('balance'), id: anId, name: words(80), referenceUg: aMass, readUg: aMass }),
  v.object({
    kind: v.literal('pH meter'),
    name: words(80),
    slopePercent: numberBetween(0, 1000),
    buffers: listOf(numberBetween(0, 14), 20),
  }),
  v.object({ kind: v.literal('alarm'), heard: aSwitch }),
])
const moved = {
  step: anId,
  from: anId,
  to: anId,
  residueUg: aMass,
  rinseUg: aMass,
  rinseLine: v.exactOptional(anId),
}
const target = v.object({ step: anId, line: anId, fromUg: aMass, toUg: aMass })
const aRemedy = oneOf('accept', 'scale', 'smaller', 'extra', 'qs', 'departure', 'cost', 'discard')

/** What the body of each kind must be before an entry from outside is let in. Nothing is changed by the check. */
const bodySchemas: { readonly [K in keyof Bodies]: v.GenericSchema<unknown, Bodies[K]> } = {
  opened: headerSchema,
  'preflight-checked': v.object({ items: listOf(v.object({ text: prose(), done: aSwitch }), 500) }),
  'instrument-checked': v.object({ instrument: anInstrument, good: aSwitch }),
  tared: v.object({ vessel: anId, tareUg: aMass, standsIn: v.exactOptional(prose(200)) }),
  'lot-chosen': v.object({
    line: anId,
    lots: listOf(anId, 200),
    opened: v.exactOptional(listOf(lotSchema, 200)),
    reason: v.exactOptional(aReason),
  }),
  weighed: v.object({
    step: anId,
    line: anId,
    vessel: anId,
    lot: v.exactOptional(anId),
    balance: v.exactOptional(anId),
    netUg: aMass,
    mode: oneOf('re-tare', 'cumulative', 'by-difference'),
    readings: listOf(aMassChange, 10),
    targetUg: aMass,
    lowUg: aMass,
    highUg: aMass,
    checkedBy: v.exactOptional(anId),
  }),
  'lot-corrected': v.object({ step: anId, entry: anId, lot: anId, reason: aReason }),
  struck: v.object({ entry: anId, reason: aReason }),
  charged: v.object(moved),
  discarded: v.object({
    vessel: anId,
    massUg: v.union([aMass, v.literal('all')]),
    line: v.exactOptional(anId),
    reason: aReason,
  }),
  spilled: v.object({ vessel: anId, massUg: aMass, reason: aReason }),
  'unplanned-added': v.object({
    component: anId,
    materialId: v.exactOptional(anId),
    name: words(),
    vessel: anId,
    netUg: aMass,
    lot: v.exactOptional(anId),
    reason: aReason,
    most: v.exactOptional(aFraction),
    material: v.exactOptional(materialSchema),
  }),
  'step-started': v.object({ step: anId }),
  'step-finished': v.object({
    step: anId,
    saw: v.exactOptional(aReason),
    checkedBy: v.exactOptional(anId),
    toolRpm: v.exactOptional(numberBetween(0, 1e6)),
    toolMm: v.exactOptional(numberBetween(0, 1e4)),
  }),
  'step-skipped': v.object({ step: anId, reason: aReason }),
  'gate-passed': v.object({ step: anId, gate: words(300), detail: aReason, reason: aReason }),
  'temperature-read': v.object({ vessel: anId, temperatureC: aTemperature, step: v.exactOptional(anId) }),
  'bath-changed': v.object({ vessel: anId, what: prose(200) }),
  'surroundings-told': v.variant('of', [
    v.object({ of: v.literal('room'), temperatureC: aTemperature }),
    v.object({ of: v.literal('bath'), vessel: anId, temperatureC: aTemperature }),
    v.object({ of: v.literal('plate'), vessel: anId, setC: v.exactOptional(aTemperature) }),
  ]),
  'timer-started': v.object({
    timer: anId,
    step: v.exactOptional(anId),
    label: words(300),
    startedAtMs: aMs,
    deadlineAtMs: aMs,
  }),
  'timer-acknowledged': v.object({ timer: anId, lateMs: numberBetween(-1e15, 1e15) }),
  measured: v.object({
    step: v.exactOptional(anId),
    check: v.exactOptional(anId),
    property: aProperty,
    label: words(),
    value: v.exactOptional(numberBetween(-1e9, 1e9)),
    text: v.exactOptional(prose()),
    unit: v.exactOptional(prose(40)),
    basis: v.exactOptional(aBasis),
    sampleC: v.exactOptional(aTemperature),
    sampleUg: v.exactOptional(aMass),
    vessel: v.exactOptional(anId),
    conditions: v.exactOptional(prose()),
    good: v.exactOptional(aSwitch),
    readings: v.exactOptional(listOf(numberBetween(-1e9, 1e9), 50)),
    how: v.exactOptional(howReadSchema),
  }),
  adjusted: v.object({
    step: anId,
    line: anId,
    vessel: anId,
    netUg: aMass,
    lot: v.exactOptional(anId),
    balance: v.exactOptional(anId),
  }),
  transferred: v.object({ ...moved, fromC: v.exactOptional(aTemperature), toC: v.exactOptional(aTemperature) }),
  evaporated: v.object({ vessel: anId, massUg: aMass, line: anId, seenBy: prose(200) }),
  'made-up': v.object({
    step: anId,
    vessel: anId,
    line: anId,
    netUg: aMass,
    grossUg: v.exactOptional(aMass),
    aboveUg: v.exactOptional(aMass),
    lot: v.exactOptional(anId),
  }),
  sampled: v.object({
    step: v.exactOptional(anId),
    vessel: anId,
    massUg: aMass,
    jars: numberBetween(0, 1e4),
    purpose: prose(300),
  }),
  filled: v.object({
    step: v.exactOptional(anId),
    vessel: anId,
    massUg: aMass,
    units: numberBetween(0, 1e6),
    grossBeforeUg: v.exactOptional(aMass),
    grossAfterUg: v.exactOptional(aMass),
  }),
  'deviation-noticed': v.object({
    deviation: anId,
    entry: anId,
    step: anId,
    line: anId,
    direction: oneOf('over', 'under'),
    byUg: aMass,
    inCup: aSwitch,
    cause: v.exactOptional(oneOf('forgotten', 'foreign', 'loss')),
    lost: v.exactOptional(listOf(v.object({ line: anId, massUg: aMass }), 300)),
  }),
  'remedy-chosen': v.object({
    deviation: anId,
    remedy: aRemedy,
    reason: aReason,
    totalUg: someMass,
    heldBackUg: aMass,
    targets: listOf(target, 2000),
    also: v.exactOptional(listOf(anId, 200)),
  }),
  noted: v.object({ text: prose(10_000), step: v.exactOptional(anId), deviation: v.exactOptional(anId) }),
  pictured: v.object({ picture: anId, caption: prose(), step: v.exactOptional(anId) }),
  'person-changed': v.object({ person: anId, from: anId }),
  parked: v.object({ reason: aReason }),
  resumed: v.object({}),
  signed: v.object({
    person: anId,
    meaning: prose(200),
    how: v.exactOptional(oneOf('pin', 'name')),
    pinSetAt: v.exactOptional(aMoment),
    insteadOf: v.exactOptional(anId),
    reason: v.exactOptional(aReason),
    step: v.exactOptional(anId),
    entry: v.exactOptional(anId),
    head: v.exactOptional(prose(64)),
  }),
  'clock-jumped': v.object({ byMs: numberBetween(-1e15, 1e15) }),
  healed: v.object({ code: words(80), entries: numberBetween(0, 1e9), streams: numberBetween(0, 1e9) }),
  'stability-planned': stabilityPlanSchema,
  'cycle-counted': v.object({ condition: anId }),
  abandoned: v.object({ reason: aReason }),
  closed: v.object({ decision: oneOf('accept', 'hold', 'rework', 'reject'), note: v.exactOptional(aReason) }),
}

const personSchemas: { readonly [K in PersonKind]: v.GenericSchema<unknown, PersonBodies[K]> } = {
  'pin-set': v.object({
    pin: v.object({ salt: someHex, hash: someHex, iterations: numberBetween(1, 1e8) }),
    how: oneOf('first', 'changed', 'forgotten'),
    reason: v.exactOptional(aReason),
  }),
  'pin-removed': v.object({}),
}

const documentSchemas: { readonly [family: string]: v.GenericSchema } = {
  material: materialSchema,
  lot: lotSchema,
  formula: formulaSchema,
  person: personSchema,
  balance: balanceSchema,
  vessel: keptVesselSchema,
  settings: v.record(v.string(), v.union([prose(200), v.number(), aSwitch])),
}

/**
 * True where an entry's body is what its kind says, or its document what its family says. A kind or a family of a newer
 * version is let in as it is: it is kept and shown as unknown.
 */
export function hasSoundBody(event: Event): boolean {
  const family = event.stream.split(':')[0] ?? ''
  if (family === 'batch') return !isKnown(event) || v.is(bodySchemas[event.kind], event.body)
  if (family === 'person' && isOfPerson(event)) return v.is(personSchemas[event.kind], event.body)
  const schema = Object.hasOwn(documentSchemas, family) ? documentSchemas[family] : undefined
  if (event.kind !== documentKind || schema === undefined) return true
  return v.is(v.object({ document: schema, reason: v.exactOptional(aReason) }), event.body)
}
