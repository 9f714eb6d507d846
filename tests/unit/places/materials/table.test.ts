import { describe, expect, it } from 'vitest'
import { importDocuments } from '../../../../src/app/import/import-documents'
import { formulaFile, materialsFile } from '../../../../src/app/import/write-documents'
import { createMaterialsTable, materialsCsv } from '../../../../src/places/materials/materials-table'
import { demonstrationCatalogue as catalogue } from '../../../house/demonstration/catalogue'
import { fakeApp } from '../../app/import/fake-app'

const csvFile = (text: string) => new File([text], 'materials.csv')

describe('a table of materials', () => {
  it('[I62] nothing comes in before it was looked at; then what is new or changed', async () => {
    const { app, saves } = fakeApp()
    await importDocuments(app, new Blob([materialsFile(catalogue.materials)]))
    const before = saves.length
    const table = createMaterialsTable(app)
    const text = (await materialsCsv(catalogue.materials, '.')).replace('Shea butter,', 'Shea butter raw,')
    await table.take(csvFile(text.replace('\r\nsqualane,', '\r\nsqualane-2,')))
    expect(table.state.value).toEqual({ step: 'preview', fresh: 1, changed: 1, same: catalogue.materials.length - 2 })
    expect(saves).toHaveLength(before)
    await table.apply()
    expect(table.state.value).toMatchObject({ step: 'done', text: expect.stringContaining('1 new, 1 changed') })
    expect(app.catalogue.materials.value.get('squalane-2')?.name).toBe('Squalane')
  })

  it.each([
    ['4.5,x', /^Row \d+, "Density": /],
    ['Id twice', /^Row 3 has the Id "m1", which stands above already\.$/],
    ['no Id', /^Row 3 has no Id\./],
    ['foreign', /^That is not a list that was saved here: it has no column "Id"\./],
  ])('[I62] %s is said with its row, and nothing comes in', async (what, sentence) => {
    const { app, saves } = fakeApp()
    const two = ['m1', what === 'Id twice' ? 'm1' : what === 'no Id' ? '' : 'm2'].map((id) => ({
      id,
      name: 'Water',
      inci: [],
      function: 'solvent',
      ...(what === '4.5,x' ? { densityGPerMl: 1.25 } : {}),
    }))
    const text = (await materialsCsv(two, '.')).replace('1.25', '"4.5,x"')
    const table = createMaterialsTable(app)
    await table.take(csvFile(what === 'foreign' ? 'Day,Who\nMonday,RK\n' : text))
    expect(table.state.value).toMatchObject({ step: 'refused', text: expect.stringMatching(sentence) })
    await table.apply()
    expect(saves).toEqual([])
  })
})

describe('a formula as a file', () => {
  it.each(catalogue.formulas)(
    '[I60] $code comes in on another tablet as it left, with its materials',
    async (formula) => {
      const { app } = fakeApp()
      const materials = new Map(catalogue.materials.map((each) => [each.id, each]))
      const answer = await importDocuments(app, new Blob([formulaFile(formula, materials)]))
      expect(answer.ok).toBe(true)
      expect([...app.catalogue.formulas.value.values()]).toEqual([formula])
      for (const [id, material] of app.catalogue.materials.value) expect(material).toEqual(materials.get(id))
    },
  )
})
