import { describe, expect, it } from 'vitest'
import type { Material } from '../../../../src/batch/catalogue'
import { checkRevision } from '../../../../src/batch/schemas/check-revision'
import { createSpreadsheet, type SpreadsheetModel } from '../../../../src/places/formulas/spreadsheet-model'
import { fakeApp } from '../../app/import/fake-app'

const text = [
  'Oat barrier body lotion QW-LOT-01',
  '',
  'Phase\tIngredient\tINCI\t%\tSupplier',
  'A\tWater\tAqua\tq.s. to 100\t',
  '\tPropanediol\tPropanediol\t4\tFerrow Ingredients',
  'B\tNiacinamide\tNiacinamide\t2\t',
  '\tPanthenol 75 %\tPanthenol, Aqua\t1.33\t',
  '',
  'Heat to 75 °C.',
].join('\n')

const here: Material[] = [
  { id: 'water', name: 'Water, purified', inci: [{ name: 'Aqua', fraction: 1 }], function: 'solvent' },
  { id: 'pd', name: 'Propanediol', inci: [{ name: 'Propanediol', fraction: 1 }], function: 'humectant' },
]

async function begun(options: Parameters<typeof fakeApp>[0] = {}, pasted = text) {
  const fake = fakeApp(options)
  for (const material of here) await fake.app.catalogue.save('material', material)
  const model = createSpreadsheet(fake.app)
  await model.load()
  await model.paste(pasted)
  return { ...fake, model }
}

const lineAt = (model: SpreadsheetModel, row: number) => {
  const line = model.table.value?.rows.find((each) => each.row === row)?.line
  if (!line) throw new Error('no such line')
  return line
}

describe('a formula from a spreadsheet', () => {
  it('[I55] nothing is saved until the person says so; then new materials as drafts and the formula that needs them', async () => {
    const { app, model, saves } = await begun()
    expect(model.kept.value?.head).toMatchObject({
      name: 'Oat barrier body lotion',
      code: 'QW-LOT-01',
      nickname: 'Lotion',
    })
    expect(model.toSettle.value, 'is Water the purified water of the house?').toBe(1)
    expect(await model.save()).toBeNull()
    expect(saves.slice(2)).toEqual([])

    model.say(lineAt(model, 3), 'water')
    expect(model.toSettle.value).toBe(0)
    const id = await model.save()
    expect(saves.slice(2).map(({ family }) => family)).toEqual(['material', 'material', 'formula'])
    const formula = app.catalogue.formulas.value.get(id ?? '')
    const revision = formula?.revisions[0]
    if (revision === undefined) throw new Error('no revision')
    const names = app.catalogue.materials.value
    expect(checkRevision(revision, (material) => names.get(material)?.name ?? null)).toEqual([])
    expect(
      revision.phases.map(({ letter, lines }) => [letter, lines.map(({ materialId }) => names.get(materialId)?.name)]),
    ).toEqual([
      ['A', ['Water, purified', 'Propanediol']],
      ['B', ['Niacinamide', 'Panthenol 75 %']],
    ])
    expect([...names.values()].filter(({ draft }) => draft).map(({ name, inci }) => [name, inci])).toEqual([
      ['Niacinamide', [{ name: 'Niacinamide', fraction: 1 }]],
      ['Panthenol 75 %', []],
    ])
    expect(revision.note).toBe(
      'Heat to 75 °C.\nPropanediol from Ferrow Ingredients\nINCI of Panthenol 75 %: Panthenol, Aqua',
    )
    expect(model.kept.value, 'what was begun is done with').toBeNull()
  })

  it('[I56] when storage gives way it is said how far it came, and saving again goes on without doubling anything', async () => {
    const { app, model, saves } = await begun({ failAfter: 3 })
    model.say(lineAt(model, 3), 'water')
    expect(await model.save()).toBeNull()
    expect(model.refusal.value).toMatch(
      /^1 of 2 new materials is saved, the formula is not: Storage is full\..*Save again/,
    )
    expect(app.catalogue.formulas.value.size).toBe(0)
    expect(model.kept.value, 'nothing that was settled is lost').not.toBeNull()

    saves.push({ family: 'lot', id: 'room was made', reason: undefined })
    expect(await model.save()).not.toBeNull()
    expect(app.catalogue.formulas.value.size).toBe(1)
    const names = [...app.catalogue.materials.value.values()].map(({ name }) => name)
    expect(names).toEqual(['Water, purified', 'Propanediol', 'Niacinamide', 'Panthenol 75 %'])
  })

  it('[I57] what was not understood is settled by typing, by another reading, or by leaving it out', async () => {
    const pasted = 'Ingredient\t%\nWater, purified\tq.s.\nPropanediol\t1-2\nSqualane\tlots\nStir well\t0'
    const { model } = await begun({}, pasted)
    expect(model.open.value).toEqual([2, 3, 4])
    model.setCell(2, 1, '1,5')
    model.setKind(3, 'left-out')
    model.setKind(4, 'note')
    expect(model.open.value).toEqual([])
    expect(lineAt(model, 2).amount).toEqual({ kind: 'fraction', fraction: 0.015 })
    expect(model.table.value?.notes).toEqual(['Stir well 0'])
    model.setKind(3, null)
    expect(model.open.value, 'and back').toEqual([3])
  })

  it('[I57] a column read as something else is read anew, and one line can be told to make up to 100 %', async () => {
    const { model } = await begun({}, 'Ingredient\tLast time\tNow\nWater, purified\t90\t80\nPropanediol\t10\t12')
    model.setRole(2, 'percent')
    expect(model.kept.value?.mapping.roles).toEqual(['name', 'ignore', 'percent'])
    expect(model.table.value?.problems).toEqual([{ code: 'TABLE_NOT_WHOLE', total: 0.92 }])
    model.settle({ fill: 1 })
    expect(model.table.value?.problems).toEqual([])
    expect(lineAt(model, 1).amount).toEqual({ kind: 'qs' })
  })

  it('[I57] what was settled survives a reload, and goes when it is thrown away', async () => {
    const { app, model, kept } = await begun()
    model.say(lineAt(model, 3), 'water')
    model.setHead('code', 'QW-NEW-01')
    const again = createSpreadsheet(app)
    await again.load()
    expect(again.kept.value).toEqual(model.kept.value)
    expect(again.toSettle.value).toBe(0)
    await again.leave()
    expect(kept.size).toBe(0)
  })

  it('[I58] what cannot be read is said in a sentence, and what was there stays', async () => {
    const { model, saves } = await begun()
    await model.takeFile(new File([Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0)], 'old.xls'))
    expect(model.refusal.value).toContain('Save it as .xlsx')
    expect(model.kept.value?.head.code).toBe('QW-LOT-01')
    expect(saves.slice(2)).toEqual([])
  })

  it('[I58] a table of something else cannot be saved, and says why', async () => {
    const { model } = await begun({}, 'Day\tWho\nMonday\tRK\nTuesday\tMO')
    expect(model.toSettle.value).toBeGreaterThan(0)
    expect(model.table.value?.problems.map(({ code }) => code)).toEqual(['TABLE_NO_NAMES'])
  })
})
