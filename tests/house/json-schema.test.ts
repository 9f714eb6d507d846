import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { publishedSchemas, schemaText } from './json-schema.ts'

describe('the published JSON Schemas', () => {
  it.each(Object.entries(publishedSchemas()))(
    '[I59] %s is what the app reads files with, to the byte',
    (name, schema) => {
      const kept = readFileSync(`public/schemas/${name}`, 'utf8')
      expect(kept === schemaText(schema), `${name} is not current: npm run schemas`).toBe(true)
    },
  )
})
