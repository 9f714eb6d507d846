import type { App } from '../../../../src/app/app'
import { emptyDraft } from '../../../../src/places/formulas/draft'
import { createEditor, type EditorModel } from '../../../../src/places/formulas/editor-model'
import { createFormulaPage } from '../../../../src/places/formulas/model'
import { fakeApp } from '../../app/import/fake-app'

/** An empty formula with water q.s. and 1 % of oat, as a person would write it. */
export async function written(options: Parameters<typeof fakeApp>[0] = {}) {
  const world = fakeApp(options)
  for (const id of ['aqua', 'oat', 'acid'])
    await world.app.catalogue.save('material', { id, name: id, inci: [], function: '' })
  const editor = createEditor(
    world.app,
    emptyDraft('f1', () => world.app.ids.next()),
  )
  const phase = editor.draft.value.phases[0]?.id ?? ''
  editor.addLine(phase)
  editor.set(lastLine(editor), 'materialId', 'aqua')
  editor.addLine(phase)
  editor.set(lastLine(editor), 'materialId', 'oat')
  editor.set(lastLine(editor), 'amount.fraction', '1')
  for (const [key, text] of Object.entries({ name: 'Lotion', code: 'L-1', nickname: 'Lotion' }))
    editor.set('head', key, text)
  return { ...world, editor }
}

/** An editor over the formula as it was saved. */
export async function change(app: App): Promise<EditorModel> {
  const page = createFormulaPage(app, 'f1')
  await page.load()
  await page.change()
  if (!page.draft.value) throw new Error('No draft')
  return createEditor(app, page.draft.value)
}

export const linesOf = (editor: EditorModel) => editor.draft.value.phases.flatMap(({ lines }) => lines)

export function lastLine(editor: EditorModel): string {
  const line = linesOf(editor).at(-1)
  if (!line) throw new Error('No line')
  return line.id
}
