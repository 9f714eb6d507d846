import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { planBatch } from '../../src/batch/plan-batch.ts'
import { catalogueFileSchema } from '../../src/batch/schemas/catalogue-file.ts'
import { checkRevision, fractionsOf } from '../../src/batch/schemas/check-revision.ts'
import { readDocument } from '../../src/batch/schemas/read-document.ts'
import { demonstrationCatalogue as catalogue } from '../house/demonstration/catalogue.ts'
import { catalogueText } from '../house/demonstration/files.ts'
import { headerOf, newestOf } from '../house/demonstration/header.ts'
import { g } from '../house/demonstration/mass.ts'

const nameOf = (id: string) => catalogue.materials.find((material) => material.id === id)?.name ?? null

describe('the demonstration catalogue', () => {
  test('its file is what the modules say, to the byte', () => {
    expect(readFileSync('demo-data/catalogue.json', 'utf8')).toBe(catalogueText())
  })

  test('its file passes the schema that any import must pass, and nothing of it is left behind', () => {
    const { format: _format, version: _version, ...lists } = JSON.parse(catalogueText())
    const read = readDocument(catalogueFileSchema, lists)
    expect(read).toEqual({ ok: true, value: lists })
  })

  test('it has about thirty materials, forty lots, four balances and four formulas, each with an id of its own', () => {
    expect(catalogue.materials.length).toBeGreaterThanOrEqual(30)
    expect(catalogue.lots.length).toBeGreaterThanOrEqual(40)
    expect(catalogue.balances).toHaveLength(4)
    expect(catalogue.formulas).toHaveLength(4)
    for (const family of [catalogue.materials, catalogue.lots, catalogue.people, catalogue.vessels])
      expect(new Set(family.map(({ id }) => id)).size).toBe(family.length)
  })

  test('every lot is of a material that is there, and some must be called out', () => {
    for (const lot of catalogue.lots) expect(nameOf(lot.materialId), lot.code).not.toBeNull()
    expect(catalogue.lots.filter((lot) => (lot.expires ?? '') < '2026-11-24').map((lot) => lot.code)).toEqual([
      'TO-031',
    ])
    expect(catalogue.lots.filter((lot) => lot.status === 'quarantine')).toHaveLength(1)
  })

  test.each(catalogue.formulas.map((formula) => [formula.code, formula] as const))(
    '%s adds up to 100 % and has nothing against it',
    (_code, formula) => {
      const revision = newestOf(formula)
      const { stated, qs } = fractionsOf(revision.phases.flatMap((phase) => phase.lines))
      expect(stated + (qs ?? 0)).toBeCloseTo(1, 12)
      expect(checkRevision(revision, nameOf)).toEqual([])
    },
  )

  test.each(
    catalogue.formulas.flatMap((formula) =>
      [newestOf(formula).usualSizeUg, g(250), g(2000)].flatMap((sizeUg) =>
        (['as-you-go', 'weigh-up-first'] as const).map((mode) => [formula.code, sizeUg / 1e6, mode, formula] as const),
      ),
    ),
  )('%s can be planned at %d g, weighing %s', (_code, grams, mode, formula) => {
    const sizeUg = g(grams)
    const plan = planBatch(headerOf(formula, { id: 'batch', number: 1, sizeUg, mode, on: '2026-11-24' }))
    if (!plan.ok) throw new Error(JSON.stringify(plan.refusal))
    const targets = [...plan.value.lines.values()].reduce((sum, line) => sum + line.targetUg, 0)
    expect(targets).toBe(sizeUg)
    expect(plan.value.heldBackUg).toBeGreaterThan(0)
    for (const line of plan.value.lines.values()) expect(line.lots.length, line.line.id).toBeGreaterThan(0)
  })
})
