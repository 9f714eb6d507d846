import './editor.css'
import { useComputed } from '@preact/signals'
import { useLayoutEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import type { FormulaDraft } from './draft'
import { EditorBar } from './editor-bar'
import { EditorHead } from './editor-head'
import { EditorLines } from './editor-lines'
import { EditorChecks, EditorLimits, EditorVessels } from './editor-lists'
import { createEditor, type EditorModel } from './editor-model'
import { EditorSide } from './editor-side'
import { EditorSteps } from './editor-steps'

interface FormulaEditorProps {
  draft: FormulaDraft
  /** A batch has used the revision that is being changed. */
  isUsed: boolean
  onLeave: () => void
}

/** One formula while it is changed. What is typed is kept at once; Save says what is missing, or makes the revision. */
export function FormulaEditor({ draft, isUsed, onLeave }: FormulaEditorProps) {
  const app = useApp()
  const editor = useMemo(() => createEditor(app, draft), [app, draft])
  useUndoKeys(editor)
  return (
    <main class="formulas editor">
      <div class="formulas-main">
        <header class="formula-head">
          <div class="formula-title">
            <EditorTitle editor={editor} />
            <p class="formula-facts">{whatItMakes(draft, isUsed)}</p>
          </div>
        </header>
        <EditorBar editor={editor} />
        <EditorHead editor={editor} />
        <EditorLines editor={editor} />
        <EditorSteps editor={editor} />
        <EditorVessels editor={editor} />
        <EditorChecks editor={editor} />
        <EditorLimits editor={editor} />
      </div>
      <EditorSide editor={editor} onLeave={onLeave} />
    </main>
  )
}

const EditorTitle = ({ editor }: { editor: EditorModel }) => {
  const title = useComputed(() => {
    const { from, head } = editor.draft.value
    return from === null ? 'New formula' : head.values.name
  })
  return <h1>{title}</h1>
}

/** Ctrl+Z and Shift+Ctrl+Z (⌘ as well) go through the editor's own history, also while a field has the focus. */
function useUndoKeys(editor: EditorModel): void {
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 'z') return
      event.preventDefault()
      if (event.shiftKey) editor.redo()
      else editor.undo()
    }
    document.addEventListener('keydown', onKey)
    return () => document.removeEventListener('keydown', onKey)
  }, [editor])
}

function whatItMakes({ from }: FormulaDraft, isUsed: boolean): string {
  if (from === null) return 'Saved as r1.'
  return isUsed
    ? `Batches have used r${from}: it stays as it is, and this becomes the next revision.`
    : `Changes r${from}.`
}
