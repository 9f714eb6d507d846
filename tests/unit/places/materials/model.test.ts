import { describe, expect, it } from 'vitest'
import type { FormModel } from '../../../../src/app/forms/form-model'
import type { Lot } from '../../../../src/batch/catalogue'
import { adjustForm, createMaterialsModel, lotForm, materialForm } from '../../../../src/places/materials/model'
import { fakeApp } from '../../app/import/fake-app'

const type = (form: FormModel, values: Record<string, string>) => {
  for (const [key, text] of Object.entries(values)) form.set(key, text)
}

const lot = (id: string, over: Partial<Lot> = {}): Lot => ({
  id,
  materialId: 'gum',
  code: id.toUpperCase(),
  receivedUg: 250_000_000,
  status: 'released',
  ...over,
})

describe('materials', () => {
  it('[I31] a material is kept as it was typed, with open ends and empty fields left out', async () => {
    const { app } = fakeApp()
    const form = materialForm(app, 'gum')
    type(form, {
      name: 'Sclerotium gum',
      function: 'thickener',
      inci: 'Sclerotium Gum',
      'useLevel.max': '1,5',
      'hazards.kind': 'dust',
      'hazards.caution': 'Dust: mask on',
    })
    expect(await form.save()).toBe(true)
    expect(app.catalogue.materials.value.get('gum')).toEqual({
      id: 'gum',
      name: 'Sclerotium gum',
      function: 'thickener',
      inci: [{ name: 'Sclerotium Gum', fraction: 1 }],
      useLevel: { min: 0, max: 0.015 },
      hazards: { kind: 'dust', caution: 'Dust: mask on', statements: [], wear: [] },
    })
  })

  it('[I29] a wrong field is said at the field, nothing is saved, and the texts survive a reload', async () => {
    const { app, saves } = fakeApp()
    const form = materialForm(app, 'gum')
    type(form, { name: 'Gum', densityGPerMl: '1.2.3', 'phWindow.min': '15', 'hazards.kind': 'dust' })
    expect(await form.save()).toBe(false)
    expect(Object.keys(form.errors.value).toSorted()).toEqual([
      'densityGPerMl',
      'function',
      'hazards.caution',
      'inci',
      'phWindow.min',
    ])
    expect(saves).toEqual([])
    const again = materialForm(app, 'gum')
    await again.load()
    expect(again.values.value).toMatchObject({ name: 'Gum', densityGPerMl: '1.2.3' })
    await again.discard()
    expect(again.values.value.name).toBe('')
  })

  it('marks lots that are expired, in quarantine or empty, and counts only good ones', async () => {
    const { app } = fakeApp()
    await app.catalogue.save('material', { id: 'gum', name: 'Gum', inci: [], function: '' })
    await app.catalogue.save('lot', lot('late', { expires: '2027-01-31' }))
    await app.catalogue.save('lot', lot('today', { expires: '2026-06-16' }))
    await app.catalogue.save('lot', lot('old', { expires: '2026-06-15' }))
    await app.catalogue.save('lot', lot('waits', { status: 'quarantine' }))
    await app.catalogue.save('lot', lot('gone', { receivedUg: 0 }))
    const model = createMaterialsModel(app)
    await model.readOnHand()
    expect(model.lotsOf('gum').map((row) => [row.lot.id, row.mark])).toEqual([
      ['today', 'good'],
      ['late', 'good'],
      ['old', 'expired'],
      ['waits', 'quarantine'],
      ['gone', 'empty'],
    ])
    expect(model.materials.value).toMatchObject([{ lots: 2, expired: 1, onHandUg: 500_000_000 }])
    model.setSearch('nothing like it')
    expect(model.materials.value).toEqual([])
  })

  it('a lot is received in the unit that was typed', async () => {
    const { app } = fakeApp()
    const form = lotForm(app, 'gum', 'l1')
    type(form, { code: 'SG-221', receivedUg: '2,5 kg', expires: '2027-02-28', assay: '75' })
    expect(await form.save()).toBe(true)
    expect(app.catalogue.lots.value.get('l1')).toEqual({
      id: 'l1',
      materialId: 'gum',
      code: 'SG-221',
      receivedUg: 2_500_000_000,
      expires: '2027-02-28',
      assay: 0.75,
      status: 'released',
    })
  })

  it('[I32] counted stock is kept as a difference with its reason and who counted, never as a figure that is edited', async () => {
    const { app } = fakeApp()
    const form = adjustForm(app, lot('l1'), 240_000_000)
    type(form, { countedUg: '236.5', reason: 'Spilt at the shelf' })
    expect(await form.save()).toBe(true)
    const kept = app.catalogue.lots.value.get('l1')
    expect(kept?.receivedUg).toBe(250_000_000)
    expect(kept?.adjustments).toMatchObject([{ massUg: -3_500_000, reason: 'Spilt at the shelf', by: 'RK' }])
  })
})
