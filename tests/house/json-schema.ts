/**
 * JSON Schemas (draft 2020-12) of what this app reads from files, made from the schemas that it reads them with, so that
 * the two cannot drift apart. `npx tsx tests/house/json-schema.ts` writes them to public/schemas.
 */
import { writeFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import type { GenericSchema } from 'valibot'
import { materialSchema } from '../../src/batch/schemas/catalogue.ts'
import { catalogueFileSchema, catalogueFormats, catalogueVersion } from '../../src/batch/schemas/catalogue-file.ts'
import { formulaSchema } from '../../src/batch/schemas/formula.ts'

type Json = { [key: string]: unknown }

/** Each published schema by its file. */
export function publishedSchemas(): Readonly<Record<string, Json>> {
  const file = partOf(catalogueFileSchema)
  return {
    'formula.schema.json': published('formula', 'A formula with its revisions', partOf(formulaSchema)),
    'material.schema.json': published('material', 'A material', partOf(materialSchema)),
    'file.schema.json': published('file', 'A file of formulas, materials and what belongs to them', {
      ...file,
      properties: {
        format: { enum: [...catalogueFormats] },
        version: { type: 'integer', minimum: 0, maximum: catalogueVersion },
        ...(file.properties as Json),
        materials: { ...((file.properties as Json).materials as Json), items: { $ref: 'material.schema.json' } },
        formulas: { ...((file.properties as Json).formulas as Json), items: { $ref: 'formula.schema.json' } },
      },
      required: ['format', 'version'],
    }),
  }
}

export const schemaText = (schema: Json): string => `${JSON.stringify(schema, null, 1)}\n`

const published = (name: string, title: string, schema: Json): Json => ({
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  $id: `${name}.schema.json`,
  title,
  ...schema,
})

/** What is looked at of a schema or of one of its checks. */
interface Part {
  readonly type: string
  readonly pipe?: readonly Part[]
  readonly requirement?: unknown
  readonly entries?: Readonly<Record<string, Part>>
  readonly item?: Part
  readonly wrapped?: Part
  readonly options?: readonly unknown[]
  readonly literal?: unknown
}

// A schema is data: its kind, its entries and its checks are fields of it.
const partOf = (schema: GenericSchema): Json => jsonOf(schema as unknown as Part)

function jsonOf(part: Part): Json {
  const [own, ...checks] = part.pipe ?? [part]
  if (own === undefined) throw new Error('An empty pipe')
  const json = own.pipe ? jsonOf(own) : kindOf(own)
  return Object.assign({}, json, ...checks.map((check) => checkOf(check, json.type)))
}

function kindOf(part: Part): Json {
  switch (part.type) {
    case 'string':
    case 'number':
    case 'boolean':
      return { type: part.type }
    case 'literal':
      return { const: part.literal }
    case 'picklist':
      return { enum: part.options }
    case 'array':
      return { type: 'array', items: jsonOf(needed(part.item)) }
    case 'union':
    case 'variant':
      return { anyOf: (part.options ?? []).map((option) => jsonOf(option as Part)) }
    case 'object': {
      const entries = Object.entries(part.entries ?? {})
      const properties = Object.fromEntries(entries.map(([key, entry]) => [key, jsonOf(entry.wrapped ?? entry)]))
      return { type: 'object', properties, required: entries.flatMap(([key, { wrapped }]) => (wrapped ? [] : key)) }
    }
    default:
      throw new Error(`There is no JSON Schema for ${part.type} yet`)
  }
}

function checkOf({ type, requirement }: Part, of: unknown): Json {
  switch (type) {
    case 'min_length':
      return of === 'array' ? { minItems: requirement } : { minLength: requirement }
    case 'max_length':
      return of === 'array' ? { maxItems: requirement } : { maxLength: requirement }
    case 'min_value':
      return { minimum: requirement }
    case 'max_value':
      return { maximum: requirement }
    case 'integer':
      return { type: 'integer' }
    case 'regex':
    case 'iso_date':
      return { pattern: (requirement as RegExp).source }
    // Blanks round a text are taken off at reading; that two ends are in order is beyond a schema.
    case 'trim':
    case 'check':
      return {}
    default:
      throw new Error(`There is no JSON Schema for ${type} yet`)
  }
}

function needed(part: Part | undefined): Part {
  if (part === undefined) throw new Error('A list without items')
  return part
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href)
  for (const [name, schema] of Object.entries(publishedSchemas()))
    writeFileSync(`public/schemas/${name}`, schemaText(schema))
