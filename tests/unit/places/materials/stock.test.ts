import { describe, expect, it } from 'vitest'
import type { App } from '../../../../src/app/app'
import { createCatalogue } from '../../../../src/app/catalogue'
import type { KeptHandle } from '../../../../src/app/live-batch'
import type { Lot } from '../../../../src/batch/catalogue'
import { createMaterialsModel, lotForm, materialForm } from '../../../../src/places/materials/model'
import { openWorld } from '../../../support/app-world'
import { grams } from '../../../support/batch'
import { formulas, lotionHeader } from '../../../support/formulas'
import { fakeApp } from '../../app/import/fake-app'

const lot = (id: string, over: Partial<Lot> = {}): Lot => ({
  id,
  materialId: 'gum',
  code: id.toUpperCase(),
  receivedUg: grams(250),
  status: 'released',
  ...over,
})

const gum = { id: 'gum', name: 'Gum', inci: [{ name: 'Sclerotium Gum', fraction: 1 }], function: 'thickener' }

/** The list over the app's own catalogue and store, with batches that really run. */
const opened = async () => {
  const world = openWorld()
  const catalogue = createCatalogue({ log: world.store.log, writer: world.writer, by: () => 'person-rk' })
  const app: App = { ...fakeApp().app, catalogue }
  return { world, catalogue, model: createMaterialsModel(app) }
}

describe('stock', () => {
  it('[F39] moves with what a batch weighs, comes back when that is struck out, and stays gone when it is thrown away', async () => {
    const { world, catalogue, model } = await opened()
    await catalogue.save('material', { ...gum, id: 'aqua', name: 'Water', reorderAtUg: grams(700) })
    await catalogue.save('lot', lot('lot-w-0831', { materialId: 'aqua', receivedUg: grams(1000) }))
    const left = async () => {
      await model.readOnHand()
      const [row] = model.materials.value
      return [row?.onHandUg, row?.reorder]
    }
    expect(await left()).toEqual([grams(1000), false])
    await world.batches.start({ do: 'open', header: lotionHeader(), preflight: [] }, [])
    const handle = (await world.batches.open('one')) as KeptHandle
    const weigh = { do: 'weigh', step: 'a-water', reading: { mode: 're-tare', readingUg: grams('348.85') } } as const
    const weighed = await handle.intend(weigh)
    expect(await left()).toEqual([grams('651.15'), true])
    await handle.intend({ do: 'strike', entry: weighed.ok ? (weighed.entries[0] ?? '') : '', reason: 'wrong beaker' })
    expect(await left()).toEqual([grams(1000), false])
    await handle.intend(weigh)
    await handle.intend({ do: 'discard-cup', vessel: 'main', reason: 'lumps' })
    expect(await left()).toEqual([grams('651.15'), true])
  })

  it('[F40] the lot that runs out or is to be tested first is used first; expired, waiting and empty ones stand after', async () => {
    const { catalogue, model } = await opened()
    await catalogue.save('material', gum)
    for (const each of [
      lot('undated'),
      lot('late', { expires: '2027-05-31' }),
      lot('soon', { expires: '2027-05-31', retestOn: '2026-06-30' }),
      lot('due', { expires: '2027-05-31', retestOn: '2026-06-15' }),
      lot('old', { expires: '2026-06-15' }),
      lot('waits', { status: 'quarantine' }),
    ])
      await catalogue.save('lot', each)
    await model.readOnHand()
    expect(model.lotsOf('gum').map(({ lot: each, mark }) => [each.id, mark])).toEqual([
      ['soon', 'good'],
      ['late', 'good'],
      ['undated', 'good'],
      ['due', 'retest'],
      ['old', 'expired'],
      ['waits', 'quarantine'],
    ])
    expect(model.materials.value).toMatchObject([{ lots: 3, expired: 1, waiting: 2, onHandUg: grams(750) }])
  })

  it('[F40] a lot is released, and put back into quarantine, each as an entry of its own with its reason', async () => {
    const { world, catalogue, model } = await opened()
    await catalogue.save('lot', lot('l1', { status: 'quarantine' }))
    const here = () => catalogue.lots.value.get('l1') ?? lot('none')
    expect(await model.setStatus(here(), 'released')).toBeNull()
    expect(await model.setStatus(here(), 'quarantine')).toBeNull()
    expect((await world.store.log.read('lot:l1')).map(({ body }) => body)).toMatchObject([
      { document: { status: 'quarantine' } },
      { document: { status: 'released' }, reason: 'released' },
      { document: { status: 'quarantine' }, reason: 'put in quarantine' },
    ])
    world.store.setMood('full')
    expect(await model.setStatus(here(), 'released')).toContain('Storage is full')
    expect(here().status).toBe('quarantine')
  })

  it('[F41] a list of hundreds is searched by name, INCI, use, lot and supplier, and by what is to be done', async () => {
    const { catalogue, model } = await opened()
    await catalogue.save('material', { ...gum, reorderAtUg: grams(300) })
    await catalogue.save('material', { ...gum, id: 'oat', name: 'Colloidal oat', inci: [], function: 'soothing' })
    await catalogue.save('material', { ...gum, id: 'gone', name: 'Old gum', archived: true })
    await catalogue.save('lot', lot('sg-221', { supplier: 'Tolmin Botanicals' }))
    await catalogue.save('lot', lot('oat-1', { materialId: 'oat', status: 'quarantine' }))
    await model.readOnHand()
    const found = (text: string) => {
      model.setSearch(text)
      return model.materials.value.map(({ material }) => material.id)
    }
    expect(['', 'GUM', 'sclerotium', 'sooth', 'sg-22', 'tolmin thick', 'none'].map(found)).toEqual([
      ['oat', 'gum'],
      ['gum'],
      ['gum'],
      ['oat'],
      ['gum'],
      ['gum'],
      [],
    ])
    model.setSearch('')
    expect(model.counts.value).toEqual({ all: 2, order: 1, look: 1, archived: 1 })
    for (const [show, ids] of [
      ['order', ['gum']],
      ['look', ['oat']],
      ['archived', ['gone']],
    ] as const) {
      model.setShow(show)
      expect(model.materials.value.map(({ material }) => material.id)).toEqual(ids)
    }
  })

  it('[F42] where a material is used is read off the current revisions, with its share', async () => {
    const { catalogue, model } = await opened()
    for (const formula of Object.values(formulas)) await catalogue.save('formula', formula)
    const uses = (id: string) => model.usesOf(id).map(({ formula, revision, share }) => [formula.code, revision, share])
    expect(uses('aqua').map(([, , share]) => share)).toEqual([null, null, null, null])
    expect(uses('squalane')).toEqual([['QW-LOT-01', 3, 0.03]])
    expect(uses('none')).toEqual([])
    await catalogue.save('formula', { ...formulas.lotion, archived: true })
    expect(uses('squalane')).toEqual([])
  })
})

describe('bad figures of a material or lot', () => {
  it('[F34] ends in the wrong order, names over 100 % and a share that is missing are said at their field', async () => {
    const { app, saves } = fakeApp()
    const form = materialForm(app, 'gum')
    for (const [key, text] of Object.entries({
      name: 'Gum',
      function: 'thickener',
      inci: 'Sclerotium Gum 60\nXanthan Gum 50',
      'useLevel.min': '2',
      'useLevel.max': '1',
      allergenParts: 'Linalool',
      hlb: '-1',
      reorderAtUg: '2 spoons',
    }))
      form.set(key, text)
    expect(await form.save()).toBe(false)
    expect(form.errors.value).toEqual({
      inci: 'The percentages come to 110 %. Together they are 100 % at most.',
      'useLevel.max': 'This end is below the other one. Change one of the two.',
      allergenParts: 'Line 1 has no percentage. Write the name, then its share: "Glycerin 20".',
      hlb: 'That is too little: 0 at least.',
      reorderAtUg: '"2 spoons" is not a number. Use digits and one decimal mark.',
    })
    expect(saves).toEqual([])
    form.set('inci', 'Sclerotium Gum 60\nXanthan Gum 40')
    for (const key of ['useLevel.min', 'allergenParts', 'hlb']) form.set(key, '')
    form.set('reorderAtUg', '0.5 kg')
    expect(await form.save()).toBe(true)
    expect(app.catalogue.materials.value.get('gum')?.reorderAtUg).toBe(grams(500))
  })

  it('[F34] a day that no calendar has is refused at its field, and a lot keeps both its days', async () => {
    const { app } = fakeApp()
    const form = lotForm(app, 'gum', 'l1')
    for (const [key, text] of Object.entries({
      code: 'SG-1',
      receivedUg: '1 kg',
      expires: '2027-02-30',
      retestOn: '2026-12-31',
    }))
      form.set(key, text)
    expect(await form.save()).toBe(false)
    expect(form.errors.value).toEqual({ expires: 'That is not a day of the calendar. Write it as 2026-06-30.' })
    form.set('expires', '2027-02-28')
    expect(await form.save()).toBe(true)
    expect(app.catalogue.lots.value.get('l1')).toMatchObject({ expires: '2027-02-28', retestOn: '2026-12-31' })
  })
})
