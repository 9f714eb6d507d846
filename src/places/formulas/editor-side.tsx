import { useRef } from 'preact/hooks'
import { Button } from '../../parts/button'
import { Notice } from '../../parts/notice'
import { PressAndHold } from '../../parts/press-and-hold'
import { useLater } from '../../parts/use-later'
import { ChecksPanel } from './checks-panel'
import type { ReadDraft } from './draft-read'
import type { EditorModel } from './editor-model'

/** After the last key; sooner it would only be in the way. */
const pauseMs = 250

/** Save, with what stands against it, and the way out. */
export function EditorSide({ editor, onLeave }: { editor: EditorModel; onLeave: () => void }) {
  useLater(editor.draft, pauseMs)
  const problems = editor.problems.peek()
  const refusal = editor.refusal.value
  const save = async () => {
    if (await editor.save()) onLeave()
  }
  return (
    <aside class="formulas-side editor-side" id="editor-side" aria-label="Save">
      <Button
        kind={problems.length === 0 ? 'filled' : 'closed'}
        size="primary"
        icon="check"
        label="Save"
        sub={
          problems.length === 0
            ? undefined
            : problems.length === 1
              ? '1 thing to settle first'
              : `${problems.length} things to settle first`
        }
        disabled={editor.saving.value}
        onPress={() => void save()}
        full
      />
      <div class="editor-says" aria-live="polite">
        {refusal && <Notice kind="over" title={refusal} />}
        {problems.map((problem) => (
          <Notice key={problem} kind="caution" title={problem} />
        ))}
      </div>
      <LiveChecks editor={editor} />
      <p class="formulas-hint">What you type is kept on this tablet, also when you go elsewhere or reload.</p>
      <PressAndHold
        label="Throw the changes away"
        icon="trash"
        onDone={() => void editor.discard().then(onLeave)}
        full
      />
    </aside>
  )
}

/** What speaks against the formula as it stands; while a field cannot be read, as it stood before. */
function LiveChecks({ editor }: { editor: EditorModel }) {
  useLater(editor.draft, pauseMs)
  const last = useRef<ReadDraft | null>(null)
  last.current = editor.revision.peek() ?? last.current
  if (last.current === null) return null
  const { revision, head } = last.current
  return <ChecksPanel revision={revision} contact={head.contact} />
}
