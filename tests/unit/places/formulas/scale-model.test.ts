import { expect, test } from 'vitest'
import { createScale } from '../../../../src/places/formulas/scale-model.ts'
import { settle, startApp } from '../start/start-app.ts'

async function scaled(onHand: Readonly<Record<string, number>> = {}) {
  const world = startApp(onHand)
  const formula = world.app.catalogue.formulas.value.get('formula-lotion')
  const revision = formula?.revisions.at(-1)
  if (!formula || !revision) throw new Error('The lotion is there')
  const model = createScale(world.app, formula, revision)
  await settle()
  return { ...world, formula, revision, model }
}

test('[F27] what runs out first is named, expired and quarantined lots are not counted, and Start gets the size', async () => {
  // 2 % of shea butter: 30 g makes 1.5 kg, or 7 bottles of 200 g with 1 % lost.
  const { app, model, went } = await scaled({ 'lot-sb-056': 30_000_000 })
  expect(model.scaled.value?.largest).toEqual({ limiting: 'shea-butter', sizeUg: 1_500_000_000 })
  model.change({ by: 'units', fill: '200', fillUnit: 'g', loss: '1' })
  expect(model.units.value).toBe(7)
  // 1,400 g ÷ 0.99, to the next whole gram.
  expect(model.scaled.value?.sizeUg).toBe(1_415_000_000)
  await model.start()
  expect(went).toEqual([{ place: 'start', formula: 'formula-lotion' }])
  const draft: unknown = JSON.parse((await app.drafts.read('start:formula-lotion')) ?? '')
  expect(draft).toMatchObject({ size: '1.415', unit: 'kg', revision: 3 })
})

test('[I29] what is typed in the scale is kept, wrong or not, and is said at its field', async () => {
  const { app, model, formula, revision } = await scaled()
  model.change({ by: 'units', density: 'heavy' })
  expect(model.refusals.value.density).toMatchObject({ code: 'NUMBER_LETTERS' })
  expect(model.scaled.value?.sizeUg).toBe(0)
  await settle()
  const again = createScale(app, formula, revision)
  await settle()
  expect(again.texts.value).toMatchObject({ by: 'units', density: 'heavy' })
})
