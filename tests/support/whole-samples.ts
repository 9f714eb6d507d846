import * as v from 'valibot'

/** What is looked at of a schema: a schema is data, its kind and its entries are fields of it. */
interface Part {
  readonly type: string
  readonly pipe?: readonly Part[]
  readonly entries?: Readonly<Record<string, Part>>
  readonly item?: Part
  readonly wrapped?: Part
  readonly options?: readonly unknown[]
  readonly literal?: unknown
}

const texts = ['something', 'id-1', '2026-11-24', '2026-11-24T10:00:00Z', 'ab']
const numbers = [7, 1, 0.5, 0, 25]

/**
 * Values that a schema takes with every field there is, the optional ones too, one for each option where there are
 * several: what is added to a schema later is in them by itself.
 */
export function wholeSamples(schema: v.GenericSchema): readonly unknown[] {
  const found = samplesOf(schema as unknown as Part)
  for (const each of found) v.parse(schema, each)
  return found
}

function samplesOf(part: Part): readonly unknown[] {
  if (part.type === 'string' || part.type === 'number') {
    const candidates: readonly unknown[] = part.type === 'string' ? texts : numbers
    const taken = candidates.filter((each) => v.is(part as unknown as v.GenericSchema, each)).slice(0, 1)
    if (taken.length === 0) throw new Error(`no ${part.type} that is taken`)
    return taken
  }
  const inner = part.pipe?.[0]
  if (inner && inner !== part && part.pipe && part.pipe.length > 1 && inner.type !== part.type) return samplesOf(inner)
  switch (part.type) {
    case 'boolean':
      return [true]
    case 'literal':
      return [part.literal]
    case 'picklist':
      return part.options ?? []
    case 'exact_optional':
    case 'optional':
      return samplesOf(needed(part.wrapped))
    case 'array':
      return [samplesOf(needed(part.item))]
    case 'union':
    case 'variant':
      return (part.options ?? []).flatMap((option) => samplesOf(option as Part))
    case 'object':
    case 'loose_object':
      return objects(needed(part.entries))
    case 'record':
      return [{ something: 'else' }]
    default:
      throw new Error(`no sample of ${part.type}`)
  }
}

/** As many objects as the field with the most options wants; each has every field. */
function objects(entries: Readonly<Record<string, Part>>): readonly unknown[] {
  const fields = Object.entries(entries).map(([key, part]) => [key, samplesOf(part)] as const)
  const most = Math.max(1, ...fields.map(([, samples]) => samples.length))
  return Array.from({ length: most }, (_, at) =>
    Object.fromEntries(fields.map(([key, samples]) => [key, samples[at % samples.length]])),
  )
}

function needed<T>(part: T | undefined): T {
  if (part === undefined) throw new Error('A schema without its part')
  return part
}
