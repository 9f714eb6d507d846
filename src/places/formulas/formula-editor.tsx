import './editor.css'
import { useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { SpecFields } from '../../app/forms/spec-fields'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Notice } from '../../parts/notice'
import { PressAndHold } from '../../parts/press-and-hold'
import type { FormulaDraft } from './draft'
import { EditorLines } from './editor-lines'
import { EditorChecks, EditorVessels } from './editor-lists'
import { createEditor, type EditorModel } from './editor-model'
import { EditorSteps } from './editor-steps'
import { headFields } from './fields'

interface FormulaEditorProps {
  draft: FormulaDraft
  /** A batch has used the revision that is being changed. */
  isUsed: boolean
  onLeave: () => void
}

/** Plain forms for one formula. What is typed is kept at once; Save says what is missing, or makes the revision. */
export function FormulaEditor({ draft, isUsed, onLeave }: FormulaEditorProps) {
  const app = useApp()
  const editor = useMemo(() => createEditor(app, draft), [app, draft])
  return (
    <main class="formulas">
      <div class="formulas-main">
        <header class="formula-head">
          <div class="formula-title">
            <h1>{draft.from === null ? 'New formula' : editor.draft.value.head.values.name}</h1>
            <p class="formula-facts">{whatItMakes(draft, isUsed)}</p>
          </div>
        </header>
        <Card label="The formula">
          <SpecFields
            specs={headFields}
            values={editor.draft.value.head.values}
            errors={editor.fieldErrors.value.head ?? {}}
            onChange={(key, text) => editor.set('head', key, text)}
            onLeave={() => void editor.settle()}
          />
        </Card>
        <EditorLines editor={editor} />
        <EditorSteps editor={editor} />
        <EditorVessels editor={editor} />
        <EditorChecks editor={editor} />
      </div>
      <EditorSide editor={editor} onLeave={onLeave} />
    </main>
  )
}

function EditorSide({ editor, onLeave }: { editor: EditorModel; onLeave: () => void }) {
  const problems = editor.problems.value
  const refusal = editor.refusal.value
  const save = async () => {
    if (await editor.save()) onLeave()
  }
  return (
    <aside class="formulas-side editor-side" aria-label="Save">
      <EditorTotal editor={editor} />
      <div class="editor-says" aria-live="polite">
        {refusal && <Notice kind="over" title={refusal} />}
        {problems.map((problem) => (
          <Notice key={problem} kind="caution" title={problem} />
        ))}
      </div>
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

function EditorTotal({ editor }: { editor: EditorModel }) {
  const { stated, qs, unread } = editor.total.value
  const inAll = qs === null ? stated : 1
  const mark = useApp().settings.decimalMark.value
  const text = (share: number) => (share * 100).toFixed(3).replace('.', mark)
  return (
    <p class="editor-total">
      <span class="editor-total-number">{text(inAll)} %</span>
      {qs === null ? 'in all' : `in all, ${text(qs)} % of it q.s.`}
      {unread > 0 && (
        <span class="editor-total-unread">
          {unread === 1 ? 'without a line that has no share yet' : `without ${unread} lines that have no share yet`}
        </span>
      )}
    </p>
  )
}

function whatItMakes({ from }: FormulaDraft, isUsed: boolean): string {
  if (from === null) return 'Saved as r1.'
  return isUsed
    ? `Batches have used r${from}: it stays as it is, and this becomes the next revision.`
    : `Changes r${from}.`
}
