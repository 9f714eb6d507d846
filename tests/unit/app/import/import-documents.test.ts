import { describe, expect, it } from 'vitest'
import { importDocuments } from '../../../../src/app/import/import-documents'
import type { Revision } from '../../../../src/batch/formula'
import { fakeApp } from './fake-app'

const material = (id: string, name = id) => ({ id, name, inci: [{ name: 'Aqua', fraction: 1 }], function: 'solvent' })

const revision: Revision = {
  number: 1,
  usualSizeUg: 500_000_000,
  phases: [
    {
      letter: 'A',
      name: 'Water',
      lines: [
        { id: 'l1', materialId: 'aqua', amount: { kind: 'qs', portions: [{ step: 's1', rest: true }] } },
        { id: 'l2', materialId: 'oat', amount: { kind: 'fraction', fraction: 0.01 } },
      ],
    },
  ],
  procedure: [
    { id: 's1', kind: 'weigh', line: 'l1', vessel: 'main', phase: 'A' },
    { id: 's2', kind: 'weigh', line: 'l2', vessel: 'main', phase: 'A' },
  ],
  specification: [],
  vessels: [{ id: 'main', name: 'Main beaker', kind: 'vessel' }],
  preflight: [],
}

const formula = (over: object = {}) => ({
  id: 'f1',
  code: 'QW-1',
  name: 'Lotion',
  nickname: 'Lotion',
  contact: 'leave-on',
  revisions: [{ ...revision, ...over }],
})

const file = (lists: object) =>
  new Blob([
    JSON.stringify({
      format: 'pannikin-formulas',
      version: 1,
      materials: [material('aqua'), material('oat')],
      ...lists,
    }),
  ])

describe('bringing in a file of documents', () => {
  it('[I21] everything in a sound file comes in, and the same file again changes nothing', async () => {
    const { app, saves } = fakeApp()
    const first = await importDocuments(app, file({ formulas: [formula()] }))
    expect(first).toMatchObject({ ok: true, value: { fresh: 3, changed: 0, same: 0 } })
    expect(saves.map(({ family }) => family)).toEqual(['material', 'material', 'formula'])
    const again = await importDocuments(app, file({ formulas: [formula()] }))
    expect(again).toMatchObject({ ok: true, value: { fresh: 0, changed: 0, same: 3 } })
    expect(saves).toHaveLength(3)
  })

  it('[I22] a file with one wrong field says where, and brings in nothing of it', async () => {
    const { app, saves } = fakeApp()
    const broken = formula()
    Object.assign(broken.revisions[0]?.phases[0]?.lines[1]?.amount ?? {}, { fraction: 'lots' })
    const answer = await importDocuments(app, file({ formulas: [structuredClone(broken)] }))
    expect(answer).toEqual({
      ok: false,
      refusal: {
        code: 'DOCUMENT_FIELD_WRONG',
        path: 'formulas[0].revisions[0].phases[0].lines[1].amount.fraction',
        wanted: 'a fraction from 0 to 1',
        found: '"lots"',
      },
    })
    Object.assign(broken.revisions[0]?.phases[0]?.lines[1]?.amount ?? {}, { fraction: 0.01 })
    expect(saves).toEqual([])
  })

  it('[I22] a missing field is named by its path', async () => {
    const answer = await importDocuments(fakeApp().app, file({ materials: [{ id: 'aqua', inci: [], function: '' }] }))
    expect(answer).toMatchObject({ refusal: { path: 'materials[0].name', wanted: 'there', found: '' } })
  })

  it('[I22] a formula whose lines cannot be weighed is refused whole', async () => {
    const { app, saves } = fakeApp()
    const answer = await importDocuments(app, file({ formulas: [formula({ procedure: revision.procedure.slice(1) })] }))
    expect(answer).toMatchObject({
      refusal: { code: 'IMPORT_FORMULA_BROKEN', problem: { code: 'LINE_NOT_WEIGHED', name: 'aqua' } },
    })
    expect(saves).toEqual([])
  })

  it('[I23] a foreign, cut, newer, empty or doubled file is refused with its own code', async () => {
    const codeOf = async (text: string) => {
      const answer = await importDocuments(fakeApp().app, new Blob([text]))
      return answer.ok ? 'ok' : answer.refusal.code
    }
    expect(await codeOf('{"format":"pannikin-for')).toBe('IMPORT_NOT_JSON')
    expect(await codeOf('{"recipes":[]}')).toBe('IMPORT_FOREIGN')
    expect(await codeOf('[1,2]')).toBe('IMPORT_FOREIGN')
    expect(await codeOf('{"format":"pannikin-formulas","version":2}')).toBe('IMPORT_NEWER')
    expect(await codeOf('{"format":"pannikin-formulas","version":1}')).toBe('IMPORT_EMPTY')
    expect(await codeOf(await file({ materials: [material('a'), material('a')] }).text())).toBe('IMPORT_ID_TWICE')
    expect(await codeOf(await file({ lots: [lot('nowhere')] }).text())).toBe('IMPORT_LOT_MATERIAL_UNKNOWN')
  })

  it('[I24] fields that no schema names are left behind', async () => {
    const { app } = fakeApp()
    await importDocuments(app, file({ materials: [{ ...material('aqua'), onclick: 'alert(1)', __proto__: { x: 1 } }] }))
    expect(app.catalogue.materials.value.get('aqua')).toEqual(material('aqua'))
  })

  it('[I24] markup in a name is text like any other', async () => {
    const { app } = fakeApp()
    await importDocuments(app, file({ materials: [material('aqua', '<img src=x onerror=alert(1)>')] }))
    expect(app.catalogue.materials.value.get('aqua')?.name).toBe('<img src=x onerror=alert(1)>')
  })

  it('[I25] a revision that is here is never replaced: a different one of the same number comes after it', async () => {
    const { app } = fakeApp()
    await importDocuments(app, file({ formulas: [formula()] }))
    const other = await importDocuments(app, file({ formulas: [formula({ note: 'Theirs' })] }))
    expect(other).toMatchObject({ ok: true, value: { fresh: 0, changed: 1, same: 2 } })
    const revisions = app.catalogue.formulas.value.get('f1')?.revisions
    expect(revisions?.map(({ number, note }) => [number, note])).toEqual([
      [1, undefined],
      [2, 'Theirs'],
    ])
    expect(await importDocuments(app, file({ formulas: [formula({ note: 'Theirs' })] }))).toMatchObject({
      value: { changed: 0, same: 3 },
    })
  })

  it('[I26] when storage gives way it says how far it came, and the same file goes on from there', async () => {
    const stopped = await importDocuments(fakeApp({ failAfter: 2 }).app, file({ formulas: [formula()] }))
    expect(stopped).toEqual({
      ok: false,
      refusal: { code: 'IMPORT_STOPPED', done: 2, of: 3, why: { code: 'STORAGE_FULL' } },
    })
  })
})

const lot = (materialId: string) => ({ id: 'lot', materialId, code: 'L-1', receivedUg: 1, status: 'released' })
