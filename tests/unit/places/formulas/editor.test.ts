import { beforeAll, describe, expect, it } from 'vitest'
import type { App } from '../../../../src/app/app'
import { keptDraft } from '../../../../src/places/formulas/draft-keeping'
import { worthOfSums } from '../../../../src/places/formulas/draft-settle'
import { createFormulaPage, createFormulasModel } from '../../../../src/places/formulas/model'
import { change, lastLine, written } from './writing'

// The arithmetic library takes its time to load on a busy machine; the page loads it once as well.
beforeAll(async () => void (await worthOfSums(['1+1'])), 60_000)

const numbers = (app: App) => app.catalogue.formulas.value.get('f1')?.revisions.map(({ number }) => number)

describe('writing a formula', () => {
  it('[I28] an empty one becomes weighable with two materials and three texts', async () => {
    const { app, editor } = await written()
    expect(editor.problems.value).toEqual([])
    expect(editor.total.value).toMatchObject({ stated: 0.01, qs: 0.99 })
    expect(await editor.save()).toBe(true)
    const revision = app.catalogue.formulas.value.get('f1')?.revisions[0]
    expect(revision?.procedure.map(({ kind }) => kind)).toEqual(['weigh', 'weigh'])
    expect(revision?.phases[0]?.lines[0]?.amount).toEqual({
      kind: 'qs',
      portions: [{ step: revision?.procedure[0]?.id, rest: true }],
    })
  })

  it('[I29] what is typed is kept at once, whether it makes sense or not, and goes when it is saved', async () => {
    const { app, editor } = await written()
    editor.set(lastLine(editor), 'amount.fraction', 'some')
    expect((await keptDraft(app.drafts, 'f1'))?.phases[0]?.lines[1]?.values['amount.fraction']).toBe('some')
    expect(await editor.save()).toBe(false)
    expect(editor.fieldErrors.value[lastLine(editor)]?.['amount.fraction']).toContain('not a number')
    expect(editor.draft.value.phases[0]?.lines[1]?.values['amount.fraction']).toBe('some')
    editor.set(lastLine(editor), 'amount.fraction', '2,5')
    expect(await editor.save()).toBe(true)
    expect(await keptDraft(app.drafts, 'f1')).toBeNull()
  })

  it('[I30] a revision that a batch has used stays as it is: the change is the next one', async () => {
    const { app, editor } = await written({ used: [1] })
    await editor.save()
    const again = await change(app)
    again.set(lastLine(again), 'amount.fraction', '2')
    expect(await again.save()).toBe(true)
    expect(numbers(app)).toEqual([1, 2])
    const shares = app.catalogue.formulas.value.get('f1')?.revisions.map((each) => each.phases[0]?.lines[1]?.amount)
    expect(shares).toEqual([
      { kind: 'fraction', fraction: 0.01 },
      { kind: 'fraction', fraction: 0.02 },
    ])
  })

  it('[I30] a revision that no batch has used is changed in place', async () => {
    const { app, editor } = await written()
    await editor.save()
    const again = await change(app)
    again.set(lastLine(again), 'amount.fraction', '2')
    await again.save()
    expect(numbers(app)).toEqual([1])
  })

  it('lines that come to more than 100 % are said at once, and refused at Save', async () => {
    const { editor, saves } = await written()
    const before = saves.length
    editor.set(lastLine(editor), 'amount.fraction', '100')
    expect(editor.problems.value).toEqual([
      'The other lines come to 100 %, so nothing is left for aqua. Take some off them.',
    ])
    expect(await editor.save()).toBe(false)
    expect(saves).toHaveLength(before)
  })

  it('without a q.s. line the sum must be 100 %; with two of them the names are said', async () => {
    const { editor } = await written()
    const [water, oat] = editor.draft.value.phases[0]?.lines.map(({ id }) => id) ?? []
    editor.set(water ?? '', 'amount.kind', 'fraction')
    editor.set(water ?? '', 'amount.fraction', '98')
    expect(editor.problems.value[0]).toContain('The lines come to 99 %')
    editor.set(water ?? '', 'amount.kind', 'qs')
    editor.set(oat ?? '', 'amount.kind', 'qs')
    expect(editor.problems.value[0]).toContain('aqua and oat')
  })

  it('a line that goes in as needed gets an adjust step and its check', async () => {
    const { editor } = await written()
    editor.addLine(editor.draft.value.phases[0]?.id ?? '')
    const acid = lastLine(editor)
    editor.set(acid, 'materialId', 'acid')
    editor.set(acid, 'amount.kind', 'as-needed')
    for (const [key, text] of Object.entries({ expected: '0.5', min: '0', max: '1.5' }))
      editor.set(acid, `amount.${key}`, text)
    expect(editor.problems.value).toEqual([])
    const steps = editor.draft.value.steps.filter(({ values }) => values.line === acid)
    expect(steps.map(({ values }) => values.kind)).toEqual(['adjust'])
    expect(editor.draft.value.checks.map(({ values }) => values.property)).toEqual(['pH'])
  })

  it('a line goes with its step, and nothing waits for that step any more', async () => {
    const { editor } = await written()
    const oat = lastLine(editor)
    const weighing = editor.draft.value.steps.find(({ values }) => values.line === oat)?.id ?? ''
    editor.addStep('mix')
    const mix = editor.draft.value.steps.at(-1)?.id ?? ''
    editor.set(mix, 'after', weighing)
    editor.remove(oat)
    expect(editor.draft.value.steps.map(({ values }) => values.kind)).toEqual(['weigh', 'mix'])
    expect(editor.draft.value.steps.at(-1)?.values.after).toBe('')
  })

  it('a step whose vessel was taken out is named', async () => {
    const { editor } = await written()
    editor.add('vessel')
    const other = editor.draft.value.vessels.at(-1)?.id ?? ''
    editor.set(other, 'name', 'Oil beaker')
    editor.set(editor.draft.value.steps[1]?.id ?? '', 'vessel', other)
    expect(editor.problems.value).toEqual([])
    editor.remove(other)
    expect(await editor.save()).toBe(false)
    expect(editor.fieldErrors.value[editor.draft.value.steps[1]?.id ?? '']?.vessel).toBe('Choose one of the list.')
  })

  it('lines move up, down and to another phase, their weighing with them', async () => {
    const { editor } = await written()
    const oat = lastLine(editor)
    editor.move(oat, -1)
    expect(editor.draft.value.phases[0]?.lines.map(({ values }) => values.materialId)).toEqual(['oat', 'aqua'])
    editor.add('phase')
    const second = editor.draft.value.phases[1]?.id ?? ''
    editor.placeLine(oat, second, 0)
    expect(editor.draft.value.phases.map(({ lines }) => lines.length)).toEqual([1, 1])
    expect(editor.draft.value.steps.find(({ values }) => values.line === oat)?.values.phase).toBe(second)
  })

  it('a share that cannot be is said while it is typed, an empty one only at Save, and the sum says that it lacks one', async () => {
    const { editor } = await written()
    const oat = lastLine(editor)
    editor.set(oat, 'amount.fraction', '120')
    expect(editor.fieldErrors.value[oat]).toEqual({ 'amount.fraction': 'That is too much: 100 % at most.' })
    expect(editor.total.value.unread).toBe(1)
    editor.set(oat, 'amount.fraction', '')
    expect(editor.fieldErrors.value[oat]).toEqual({})
    await editor.save()
    expect(editor.fieldErrors.value[oat]).toEqual({ 'amount.fraction': 'Share of the batch is needed.' })
  })

  it('a typed sum is worked out when the field is left', async () => {
    const { editor } = await written()
    editor.set(lastLine(editor), 'amount.fraction', '3/2')
    await editor.settle()
    expect(editor.draft.value.phases[0]?.lines[1]?.values['amount.fraction']).toBe('1.5')
  })

  it('[I29] storage that refuses says so and keeps what was typed', async () => {
    const { app, editor } = await written({ failAfter: 3 })
    expect(await editor.save()).toBe(false)
    expect(editor.refusal.value).toContain('Storage is full')
    expect(await keptDraft(app.drafts, 'f1')).not.toBeNull()
  })
})

describe('the list of formulas', () => {
  it('hides those put away, finds by code, and lists what was begun and not saved', async () => {
    const { app, editor, gone } = await written()
    await editor.save()
    const model = createFormulasModel(app)
    model.setSearch('l-1')
    expect(model.formulas.value.map(({ id }) => id)).toEqual(['f1'])
    await createFormulaPage(app, 'f1').archive(true)
    expect(model.formulas.value).toEqual([])
    model.showArchived(true)
    expect(model.formulas.value).toHaveLength(1)
    await model.begin()
    await model.readBegun()
    expect(model.begun.value).toHaveLength(1)
    expect(gone).toEqual([{ place: 'formulas', formula: model.begun.value[0]?.id }])
  })
})
