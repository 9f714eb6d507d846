import './editor-bar.css'
import { useFormat } from '../../app/format'
import { Button } from '../../parts/button'
import { Mark } from '../../parts/mark'
import type { EditorModel } from './editor-model'
import { standingOf } from './total'

/** What stays in sight while the formula is long: the total, undo and redo, and the way to each part. */
export const EditorBar = ({ editor }: { editor: EditorModel }) => (
  <div class="editor-bar">
    <EditorTotal editor={editor} />
    <EditorUndo editor={editor} />
    <nav class="editor-jumps" aria-label="Parts of the formula">
      {parts.map(({ id, label }) => (
        <Button key={id} kind="plain" size="small" label={label} onPress={() => jumpTo(id)} />
      ))}
    </nav>
  </div>
)

function EditorTotal({ editor }: { editor: EditorModel }) {
  const format = useFormat()
  const total = editor.total.value
  const standing = standingOf(total)
  const inAll = total.qs === null || total.qs < 0 ? total.stated : 1
  const kind = standing.kind === 'whole' ? 'within' : standing.kind === 'missing' ? 'part' : 'over'
  const words =
    standing.kind === 'whole'
      ? total.qs === null
        ? 'in all'
        : `${format.percent(total.qs, 3)} of it q.s.`
      : `${format.percent(standing.share, 3)} ${standing.kind === 'missing' ? 'missing' : 'too much'}`
  return (
    <p class={`editor-total editor-total-${kind}`} role="status">
      <Mark kind={total.unread > 0 && kind === 'within' ? 'part' : kind} />
      <span class="editor-total-number">{format.percent(inAll, 3)}</span>
      <span class="editor-total-words">
        {words}
        {total.unread > 0 && (
          <span class="editor-total-unread">
            {total.unread === 1 ? '1 line has no share yet' : `${total.unread} lines have no share yet`}
          </span>
        )}
      </span>
    </p>
  )
}

const EditorUndo = ({ editor }: { editor: EditorModel }) => (
  <div class="editor-undo">
    <Button icon="undo" label="Undo" disabled={!editor.canUndo.value} onPress={editor.undo} />
    <Button icon="redo" label="Redo" disabled={!editor.canRedo.value} onPress={editor.redo} />
    <Button class="editor-to-save" kind="outline" label="To Save" onPress={() => jumpTo('editor-side')} />
  </div>
)

const parts = [
  { id: 'editor-head', label: 'About' },
  { id: 'editor-lines', label: 'Lines' },
  { id: 'editor-steps', label: 'Procedure' },
  { id: 'editor-vessels', label: 'Vessels' },
  { id: 'editor-checks', label: 'Specification' },
] as const

function jumpTo(id: string): void {
  const part = document.getElementById(id)
  part?.scrollIntoView()
  part?.querySelector<HTMLElement>('input, button, select')?.focus({ preventScroll: true })
}
