import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { formulaFile } from '../../../../src/app/import/write-documents'
import { formulaSchema } from '../../../../src/batch/schemas/formula'
import { readDocument } from '../../../../src/batch/schemas/read-document'
import { demonstrationCatalogue as catalogue } from '../../../house/demonstration/catalogue'
import { catalogueText } from '../../../house/demonstration/files'
import { publishedSchemas } from '../../../house/json-schema'

const read = (name: string) => readFileSync(`public/schemas/${name}`, 'utf8')

const { formula, material, file } = validators()

function validators() {
  const ajv = new Ajv2020({ strict: true, strictRequired: false, allErrors: false })
  for (const name of Object.keys(publishedSchemas())) ajv.addSchema(JSON.parse(read(name)))
  const byId = (name: string) => {
    const validate = ajv.getSchema(`${name}.schema.json`)
    if (validate === undefined) throw new Error(`no schema ${name}`)
    return (data: unknown) => validate(data) === true
  }
  return { formula: byId('formula'), material: byId('material'), file: byId('file') }
}

describe('the published JSON Schemas', () => {
  it('[I59] the demonstration and every saved formula are valid by them', () => {
    for (const each of catalogue.formulas) expect(formula(each), each.code).toBe(true)
    for (const each of catalogue.materials) expect(material(each), each.name).toBe(true)
    expect(file(JSON.parse(catalogueText()))).toBe(true)
    const materials = new Map(catalogue.materials.map((each) => [each.id, each]))
    for (const each of catalogue.formulas) expect(file(JSON.parse(formulaFile(each, materials)))).toBe(true)
  })

  it('[I59] what one of the two refuses the other refuses: every field of a formula taken out or made wrong', () => {
    const [whole] = catalogue.formulas
    if (whole === undefined) throw new Error('no formula')
    const tried = { refused: 0, taken: 0 }
    for (const broken of brokenOnes(whole)) {
      const answer = readDocument(formulaSchema, broken)
      // That two ends are in order is beyond a JSON Schema.
      if (!answer.ok && answer.refusal.wanted === 'a minimum at or below its maximum') continue
      const ours = answer.ok
      expect(formula(broken), JSON.stringify(broken).slice(0, 200)).toBe(ours)
      tried[ours ? 'taken' : 'refused'] += 1
    }
    expect(tried.refused).toBeGreaterThan(300)
    expect(tried.taken).toBeGreaterThan(20)
  })

  it('[I59] a file without its format, of a newer version or with a wrong material is not valid', () => {
    expect(file({ format: 'pannikin-formulas', version: 1 })).toBe(true)
    expect(file({ version: 1 })).toBe(false)
    expect(file({ format: 'pannikin-formulas', version: 2 })).toBe(false)
    expect(file({ format: 'pannikin-formulas', version: 1, materials: [{ id: 'x' }] })).toBe(false)
  })
})

/** The document with each of its fields in turn taken out, and in turn made a wrong kind of thing. */
function* brokenOnes(document: object): Generator<unknown> {
  for (const path of pathsOf(document)) {
    for (const wrong of [undefined, { not: 'this' }, -1, 0.5]) {
      const copy: unknown = structuredClone(document)
      const parent = path.slice(0, -1).reduce((inner, key) => (inner as Record<string, unknown>)[key], copy) as Record<
        string,
        unknown
      >
      const key = path.at(-1) ?? ''
      if (wrong === undefined) delete parent[key]
      else parent[key] = wrong
      if (!Array.isArray(parent) || wrong !== undefined) yield copy
    }
  }
}

function* pathsOf(value: unknown, before: readonly string[] = []): Generator<readonly string[]> {
  if (typeof value !== 'object' || value === null) return
  for (const [key, inner] of Object.entries(value)) {
    const path = [...before, key]
    yield path
    yield* pathsOf(inner, path)
  }
}
