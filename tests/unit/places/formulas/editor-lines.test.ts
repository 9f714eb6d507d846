import { beforeAll, describe, expect, it } from 'vitest'
import { worthOfSums } from '../../../../src/places/formulas/draft-settle'
import type { EditorModel } from '../../../../src/places/formulas/editor-model'
import { qsShares, standingOf } from '../../../../src/places/formulas/total'
import { lastLine, linesOf, written } from './writing'

// The arithmetic library takes its time to load on a busy machine; the page loads it once as well.
beforeAll(async () => void (await worthOfSums(['1+1'])), 60_000)

const settled = async (editor: EditorModel, line: string, text: string): Promise<string | undefined> => {
  editor.set(line, 'amount.fraction', text)
  await editor.settle()
  return linesOf(editor).find(({ id }) => id === line)?.values['amount.fraction']
}

const materials = (editor: EditorModel) =>
  editor.draft.value.phases.map(({ lines }) => lines.map(({ values }) => values.materialId))

const weighings = (editor: EditorModel) =>
  editor.draft.value.steps.map(({ values }) => linesOf(editor).find(({ id }) => id === values.line)?.values.materialId)

describe('the share of a line', () => {
  it('[F31] % and a mass of the usual batch come to the same, as sums too, with either decimal mark', async () => {
    const { editor } = await written()
    const oat = lastLine(editor)
    for (const text of ['3', '3 %', '15 g', '15g', '15000 mg', '0.015 kg', '3.0', '3,0', '0.9/0.3', '2*7.5 g'])
      expect([text, await settled(editor, oat, text)]).toEqual([text, text === '3.0' || text === '3,0' ? text : '3'])
    expect(await settled(editor, oat, '3/0.3')).toBe('10')
    expect(editor.total.value.stated).toBe(0.1)
  })

  it('[F31] a sum counts in the total as soon as its worth is known, before the field is left', async () => {
    const { editor } = await written()
    editor.set(lastLine(editor), 'amount.fraction', '3/0.3')
    await expect.poll(() => editor.total.value.stated).toBe(0.1)
    expect(editor.total.value.unread).toBe(0)
    expect(editor.fieldErrors.value[lastLine(editor)]).toBeUndefined()
    expect(linesOf(editor).at(-1)?.values['amount.fraction']).toBe('3/0.3')
  })

  it('[F34] a unit that is none of a share, a mass without a usual batch, less than nothing and too much are said at the field', async () => {
    const { editor } = await written()
    const oat = lastLine(editor)
    const said = (text: string) => {
      editor.set(oat, 'amount.fraction', text)
      return editor.fieldErrors.value[oat]?.['amount.fraction']
    }
    expect(said('3 spoons')).toBe('"spoons" is not a unit of a share. Write %, or a mass in g, mg or kg.')
    expect(said('-3')).toBe('That is too little: 0 % at least.')
    expect(said('-3 g')).toBe('It cannot be below zero. Leave the minus out.')
    expect(said('501 g')).toBe('That is too much: 100 % at most.')
    expect(said('1.2.3')).toContain('more than one decimal mark')
    editor.set('head', 'usualSizeUg', '')
    expect(said('15 g')).toBe('A mass becomes a share of the usual batch: say its size first.')
    expect(await editor.save()).toBe(false)
    expect(linesOf(editor).at(-1)?.values['amount.fraction']).toBe('15 g')
  })

  it('[F34] ends in the wrong order, and two phases of one letter, are said at the field', async () => {
    const { editor } = await written()
    const oat = lastLine(editor)
    editor.set(oat, 'range.min', '3')
    editor.set(oat, 'range.max', '2')
    expect(editor.fieldErrors.value[oat]).toEqual({
      'range.max': 'This end is below the other one. Change one of the two.',
    })
    editor.set(oat, 'range.max', '')
    editor.add('phase')
    const second = editor.draft.value.phases[1]?.id ?? ''
    editor.set(second, 'letter', 'A')
    expect(editor.fieldErrors.value[second]?.letter).toBe('Another one has this already. Choose a different one.')
  })

  it('[F34] two q.s. lines, more than 100 % beside a q.s. line, and less or more without one are each said by name', async () => {
    const { editor } = await written()
    const [water = '', oat = ''] = linesOf(editor).map(({ id }) => id)
    editor.set(oat, 'amount.kind', 'qs')
    expect(editor.problems.value).toEqual(['aqua and oat are all q.s. Only one line can make up to 100 %.'])
    editor.set(oat, 'amount.kind', 'fraction')
    editor.set(oat, 'amount.fraction', '100')
    expect(standingOf(editor.total.value)).toEqual({ kind: 'too-much', share: 0 })
    editor.set(water, 'amount.kind', 'fraction')
    editor.set(water, 'amount.fraction', '1.5')
    expect(standingOf(editor.total.value)).toEqual({ kind: 'too-much', share: 0.015 })
    expect(editor.problems.value[0]).toContain('The lines come to 101.5 %, not 100 %.')
    editor.set(oat, 'amount.fraction', '98')
    expect(standingOf(editor.total.value)).toEqual({ kind: 'missing', share: 0.005 })
    editor.set(oat, 'amount.fraction', '98.5')
    expect(standingOf(editor.total.value)).toEqual({ kind: 'whole' })
  })
})

describe('undo', () => {
  it('[F30] takes typing back field by field, brings a line that was taken out back with its step, and is kept as the draft', async () => {
    const { app, editor } = await written()
    const oat = lastLine(editor)
    const before = editor.draft.value
    editor.remove(oat)
    expect(linesOf(editor)).toHaveLength(1)
    editor.undo()
    expect(editor.draft.value).toBe(before)
    editor.set(oat, 'amount.fraction', '2')
    editor.set(oat, 'amount.fraction', '2.')
    editor.set(oat, 'amount.fraction', '2.5')
    editor.undo()
    expect(linesOf(editor).at(-1)?.values['amount.fraction']).toBe('1')
    editor.redo()
    expect(linesOf(editor).at(-1)?.values['amount.fraction']).toBe('2.5')
    expect(await app.drafts.read('formula:f1')).toBe(JSON.stringify(editor.draft.value))
  })

  it('[F30] a sum that was worked out is undone to what stood there before it was typed', async () => {
    const { editor } = await written()
    await settled(editor, lastLine(editor), '3/0.3')
    editor.undo()
    expect(linesOf(editor).at(-1)?.values['amount.fraction']).toBe('1')
  })
})

describe('moving and splitting', () => {
  it('[F32] a line goes on from one phase into the next, and its weighing joins those there, in their vessel', async () => {
    const { editor } = await written()
    editor.add('phase')
    const second = editor.draft.value.phases[1]?.id ?? ''
    editor.addLine(second, 'acid')
    editor.add('vessel')
    const beaker = editor.draft.value.vessels.at(-1)?.id ?? ''
    editor.set(editor.draft.value.steps.at(-1)?.id ?? '', 'vessel', beaker)
    const oat = linesOf(editor)[1]?.id ?? ''
    editor.stepLine(oat, 1)
    expect(materials(editor)).toEqual([['aqua'], ['oat', 'acid']])
    expect(weighings(editor)).toEqual(['aqua', 'acid', 'oat'])
    expect(editor.draft.value.steps.at(-1)?.values).toMatchObject({ vessel: beaker, phase: second })
    editor.stepLine(oat, -1)
    expect(materials(editor)).toEqual([['aqua', 'oat'], ['acid']])
  })

  it('[F32] weighings follow the order of their lines while they stand in it, never across another step', async () => {
    const { editor } = await written()
    const phase = editor.draft.value.phases[0]?.id ?? ''
    editor.addLine(phase, 'acid')
    editor.placeLine(lastLine(editor), phase, 0)
    expect(materials(editor)).toEqual([['acid', 'aqua', 'oat']])
    expect(weighings(editor)).toEqual(['acid', 'aqua', 'oat'])
    editor.addStep('mix')
    editor.placeStep(editor.draft.value.steps.at(-1)?.id ?? '', 1)
    editor.placeLine(lastLine(editor), phase, 0)
    expect(weighings(editor)).toEqual(['acid', undefined, 'oat', 'aqua'])
  })

  it('[F33] a line that is split keeps the total: two of the same material, half the share and a weighing each', async () => {
    const { editor } = await written()
    const oat = lastLine(editor)
    editor.set(oat, 'amount.fraction', '5')
    editor.split(oat)
    expect(linesOf(editor).map(({ values }) => values['amount.fraction'])).toEqual([undefined, '2.5', '2.5'])
    expect(weighings(editor)).toEqual(['aqua', 'oat', 'oat'])
    expect(editor.total.value.stated).toBe(0.05)
    expect(editor.problems.value).toEqual([])
  })

  it('[F33] a q.s. line is weighed in another step instead, and the rest says what is left', async () => {
    const { editor } = await written()
    const water = linesOf(editor)[0]
    if (!water) throw new Error('No line')
    editor.split(water.id)
    expect(linesOf(editor)).toHaveLength(2)
    const portion = editor.draft.value.steps[1]?.id ?? ''
    expect(editor.problems.value[0]).toContain('more than one takes the rest')
    editor.set(portion, 'portion', '12')
    expect(editor.problems.value).toEqual([])
    expect(qsShares(editor.draft.value, water, editor.world.value)).toEqual({
      portions: 0.12,
      heldBack: 0.03,
      adjusters: 0,
      rest: 0.84,
    })
  })

  it('[F35] with nothing stated nothing is held back where there is no room, and without a rest all that is left is', async () => {
    const { editor } = await written()
    const [water, oat] = linesOf(editor)
    if (!water || !oat) throw new Error('No line')
    editor.set(oat.id, 'amount.fraction', '98')
    const shares = () => qsShares(editor.draft.value, linesOf(editor)[0] ?? water, editor.world.value)
    expect(shares()).toEqual({ portions: 0, heldBack: 0, adjusters: 0, rest: 0.02 })
    editor.set(editor.draft.value.steps[0]?.id ?? '', 'portion', '0.5')
    expect(shares()).toEqual({ portions: 0.005, heldBack: 0.015, adjusters: 0, rest: null })
  })
})
