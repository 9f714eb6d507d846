import * as v from 'valibot'
import { keyIdOf } from '../device-signature'
import { documentKind } from '../document'
import type { Event } from '../event'
import { isOfKey, type KeyBodies, type KeyEvent, type KeyKind, keyStream } from '../key-trail'
import { isKnown } from '../kinds'
import { isOfPerson, type PersonBodies, type PersonKind } from '../person-trail'
import { isOfPicture, pictureKind } from '../picture'
import { bodySchemas } from './bodies'
import { balanceSchema, keptVesselSchema, lotSchema, materialSchema, personSchema } from './catalogue'
import { formulaSchema } from './formula'
import { aSwitch, countUpTo, numberBetween, oneOf, prose } from './pieces'
import { keptTemplateSchema } from './stability'

const aReason = v.exactOptional(prose(2000))
const someHex = v.pipe(v.string(), v.regex(/^[0-9a-f]{16,128}$/))

const personSchemas: { readonly [K in PersonKind]: v.GenericSchema<unknown, PersonBodies[K]> } = {
  'pin-set': v.object({
    pin: v.object({ salt: someHex, hash: someHex, iterations: numberBetween(1, 1e8) }),
    how: oneOf('first', 'changed', 'forgotten'),
    reason: aReason,
  }),
  'pin-removed': v.object({}),
}

const keySchemas: { readonly [K in KeyKind]: v.GenericSchema<unknown, KeyBodies[K]> } = {
  'key-made': v.object({ publicKey: prose(500) }),
  'key-lost': v.object({ why: oneOf('missing', 'unusable'), instead: prose(64) }),
}

const documentSchemas: { readonly [family: string]: v.GenericSchema } = {
  material: materialSchema,
  lot: lotSchema,
  formula: formulaSchema,
  person: personSchema,
  balance: balanceSchema,
  vessel: keptVesselSchema,
  template: keptTemplateSchema,
  settings: v.record(v.string(), v.union([prose(200), v.number(), aSwitch])),
}

/**
 * Null where an entry's body is what its kind says, or its document what its family says; else the path of the first
 * field that is not. A kind or a family of a newer version is let in as it is: it is kept and shown as unknown.
 */
export function faultInBody(event: Event): string | null {
  if (event.stream.startsWith('picture:') && event.kind === pictureKind) return faultInPicture(event)
  if (event.stream.startsWith('device:') && isOfKey(event)) return faultInKey(event)
  const schema = schemaOf(event)
  return schema === null ? null : faultBy(schema, event.body)
}

function faultBy(schema: v.GenericSchema, body: unknown): string | null {
  const read = v.safeParse(schema, body)
  if (read.success) return null
  const path = v.getDotPath(read.issues[0])
  return path === null ? 'body' : `body.${path}`
}

const aPictureKind = oneOf('image/webp', 'image/jpeg', 'image/png', 'image/avif')
const aPicture = v.object({ mime: aPictureKind, width: countUpTo(1e5), height: countUpTo(1e5), base64: v.string() })

/** Its bytes must be those that its stream is named by. */
function faultInPicture({ body, stream }: Event): string | null {
  return v.is(aPicture, body) && isOfPicture(body.base64, stream) ? null : 'body.base64'
}

/** A key is the one that its stream is named by. */
function faultInKey(event: KeyEvent): string | null {
  const fault = faultBy(keySchemas[event.kind], event.body)
  if (fault !== null || event.kind === 'key-lost') return fault
  return keyStream(keyIdOf(event.body.publicKey) ?? '') === event.stream ? null : 'body.publicKey'
}

function schemaOf(event: Event): v.GenericSchema | null {
  const family = event.stream.split(':')[0] ?? ''
  if (family === 'batch') return isKnown(event) ? bodySchemas[event.kind] : null
  if (family === 'person' && isOfPerson(event)) return personSchemas[event.kind]
  const schema = Object.hasOwn(documentSchemas, family) ? documentSchemas[family] : undefined
  if (event.kind !== documentKind || schema === undefined) return null
  return v.object({ document: schema, reason: aReason })
}
