import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Material } from '../../../src/batch/catalogue'
import { materialsCsv, readMaterialsCsv } from '../../../src/places/materials/materials-table'
import { demonstrationCatalogue } from '../../house/demonstration/catalogue'
import { propertyRuns } from '../runs'

const none: ReadonlyMap<string, Material> = new Map()

/** One line, trimmed, with all that a spreadsheet or a separator could trip over. */
const aText = fc
  .oneof(
    fc.string({ minLength: 1, maxLength: 40 }),
    fc.string({ unit: fc.constantFrom(...`=+-@'",;|<>()% aÄ`), minLength: 1, maxLength: 20 }),
    fc.constantFrom('=1+1', "'=x", 'CI 77891', '<table>', 'Id', '-', 'PEG-100 Stearate', 'yes'),
  )
  .map((text) => text.trim())
  .filter((text) => text !== '')

/** What stands before a percentage ends in a sign of a name. */
const anInci = aText.filter((text) => !/[:;=]$/.test(text))

const aFraction = fc.integer({ min: 0, max: 1e7 }).map((n) => n / 1e7)
const aRange = (end: fc.Arbitrary<number>) =>
  fc.tuple(end, end).map(([a, b]) => ({ min: Math.min(a, b), max: Math.max(a, b) }))

const aMaterial: fc.Arbitrary<Omit<Material, 'id'>> = fc.record(
  {
    name: aText,
    function: fc.oneof(aText, fc.constant('')),
    inci: fc.array(fc.record({ name: anInci, fraction: aFraction }), { maxLength: 4 }),
    form: fc.constantFrom('liquid', 'powder', 'solid', 'paste', 'solution'),
    densityGPerMl: fc.integer({ min: 1, max: 2500 }).map((n) => n / 100),
    useLevel: aRange(aFraction),
    phWindow: aRange(fc.integer({ min: 0, max: 140 }).map((n) => n / 10)),
    maxTemperatureC: fc.integer({ min: -20, max: 200 }),
    volatile: fc.constant(true),
    costPerKg: fc.integer({ min: 0, max: 1e6 }).map((n) => n / 100),
    hazards: fc.record({
      caution: aText,
      kind: fc.constantFrom('dust', 'caustic', 'acid', 'other'),
      statements: fc.array(aText, { maxLength: 3 }),
      wear: fc.array(aText, { maxLength: 3 }),
    }),
    allergens: fc.array(aText, { minLength: 1, maxLength: 3 }),
  },
  { requiredKeys: ['name', 'function', 'inci'] },
)

describe('the list of materials as a table', () => {
  it('[I61] written and brought in again every material is the same', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(aMaterial, { minLength: 1, maxLength: 6 }),
        fc.constantFrom('.', ','),
        async (list, mark) => {
          const materials = list.map((material, at): Material => ({ id: `m${at}`, ...material }))
          const read = await readMaterialsCsv(await materialsCsv(materials, mark === ',' ? ',' : '.'), none)
          expect(read).toEqual({ ok: true, value: materials })
        },
      ),
      propertyRuns,
    )
  })

  it('[I61] so is the demonstration, and what the form has not is kept from what is here', async () => {
    const { materials } = demonstrationCatalogue
    const here = new Map(materials.map((each) => [each.id, each]))
    for (const mark of ['.', ','] as const)
      expect(await readMaterialsCsv(await materialsCsv(materials, mark), here)).toEqual({ ok: true, value: materials })
  })

  it('[I61] a text that a spreadsheet would run as a sum leaves with an apostrophe before it', async () => {
    const text = await materialsCsv([{ id: 'm', name: '=HYPERLINK("x")', inci: [], function: '+1' }], '.')
    expect(text).toContain(`"'=HYPERLINK(""x"")",'+1,`)
  })
})
