import * as v from 'valibot'

const text = v.optional(v.fallback(v.string(), ''), '')
const texts = v.fallback(v.record(v.string(), v.string()), {})

const vesselSchema = v.object({
  /** A vessel of the house; empty for one that is only described here. */
  kept: text,
  name: text,
  tare: text,
  capacity: text,
  standsIn: text,
})

const choiceSchema = v.object({
  /** Null: the newest one. */
  revision: v.fallback(v.nullable(v.number()), null),
  /** As typed; null for the usual size. */
  size: v.fallback(v.nullable(v.string()), null),
  unit: v.fallback(v.picklist(['g', 'kg', 'mg', 'oz', 'lb']), 'g'),
  mode: v.fallback(v.picklist(['as-you-go', 'weigh-up-first']), 'as-you-go'),
  /** By the id of the formula's vessel; what is not named is proposed. */
  vessels: v.fallback(v.record(v.string(), vesselSchema), {}),
  balances: texts,
  /** By line: what it is diluted in, and how far. */
  premixes: v.fallback(v.record(v.string(), v.object({ into: v.string(), oneIn: v.number() })), {}),
  lots: v.fallback(v.record(v.string(), v.array(v.string())), {}),
  performs: v.fallback(v.nullable(v.string()), null),
  /** Empty: nobody checks. */
  checks: text,
  list: v.fallback(v.array(v.string()), []),
  balanceChecks: v.fallback(v.record(v.string(), v.object({ reference: text, read: text })), {}),
  slope: text,
  buffers: text,
  alarm: v.fallback(v.nullable(v.picklist(['heard', 'not heard'])), null),
  ambient: text,
  kept: v.fallback(v.array(v.object({ code: v.string(), about: v.string(), reason: v.string() })), []),
})

/** Everything half-chosen for a batch, as typed: what a reload must not lose. */
export type Choice = v.InferOutput<typeof choiceSchema>
export type VesselChoice = v.InferOutput<typeof vesselSchema>
export type SizeUnit = Choice['unit']

export const noChoice: Choice = v.parse(choiceSchema, {
  revision: null,
  size: null,
  unit: 'g',
  mode: 'as-you-go',
  vessels: {},
  balances: {},
  premixes: {},
  lots: {},
  performs: null,
  list: [],
  balanceChecks: {},
  alarm: null,
  kept: [],
})

/** A kept draft; what an older version wrote differently starts anew, field by field. */
export function readChoice(draft: string | null): Choice {
  if (draft === null) return noChoice
  try {
    const read = v.safeParse(choiceSchema, { ...noChoice, ...JSON.parse(draft) })
    return read.success ? read.output : noChoice
  } catch {
    return noChoice
  }
}
