import { describe, expect, it } from 'vitest'
import { formulaFromTable, type ImportedFormula } from '../../../../src/app/import/formula-from-table'
import { saveImport } from '../../../../src/app/import/save-import'
import { guessMapping } from '../../../../src/app/import/table/columns'
import { readTable } from '../../../../src/app/import/table/read-table'
import { nothingSettled } from '../../../../src/app/import/table/settled'
import { fakeApp } from './fake-app'

const rows = [
  ['Ingredient', '%'],
  ['Water', 'q.s.'],
  ['Propanediol', '4'],
]

function made(): ImportedFormula {
  const sheet = { name: 'Lotion', rows }
  return formulaFromTable({
    table: readTable(sheet, guessMapping(sheet), nothingSettled),
    head: { code: 'QW-1', name: 'Lotion', nickname: 'Lotion', contact: 'leave-on', usualSizeUg: 500_000_000 },
    materialOf: () => null,
    idOf: (thing) => thing.replaceAll(' ', '-'),
  })
}

describe('saving what a spreadsheet made', () => {
  it('[I55] what does not hold together is refused whole: not even its materials are saved', async () => {
    const { app, saves } = fakeApp()
    const { formula, materials } = made()
    const long = { ...formula, code: 'x'.repeat(41) }
    expect(await saveImport(app, { formula: long, materials })).toMatchObject({ refusal: { path: 'code' } })
    expect(await saveImport(app, { formula, materials: materials.slice(1) })).toMatchObject({
      refusal: { code: 'LINE_MATERIAL_UNKNOWN' },
    })
    expect(
      await saveImport(app, { formula, materials: materials.map((each) => ({ ...each, name: '' })) }),
    ).toMatchObject({
      refusal: { path: 'name' },
    })
    expect(saves).toEqual([])
    expect(await saveImport(app, { formula, materials })).toEqual({ ok: true, value: 'formula' })
    expect(saves.map(({ family }) => family)).toEqual(['material', 'material', 'formula'])
  })
})
