import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { EditorItem } from './editor-item'
import type { EditorModel } from './editor-model'

/** The vessels and cups that the procedure names. */
export const EditorVessels = ({ editor }: { editor: EditorModel }) => (
  <Card labelledBy="editor-vessels">
    <h2 id="editor-vessels">Vessels</h2>
    <ol class="editor-items" aria-label="Vessels">
      {editor.draft.value.vessels.map((vessel) => (
        <EditorItem
          key={vessel.id}
          editor={editor}
          item={vessel}
          label={vessel.values.name || 'Without a name yet'}
          sub={vessel.values.kind}
          removeLabel="Take this vessel out"
        />
      ))}
    </ol>
    <Button icon="plus" label="Add a vessel or cup" onPress={() => editor.add('vessel')} />
  </Card>
)

/** What is measured, and what it must be. */
export const EditorChecks = ({ editor }: { editor: EditorModel }) => (
  <Card labelledBy="editor-checks">
    <h2 id="editor-checks">Specification</h2>
    <ol class="editor-items" aria-label="Checks">
      {editor.draft.value.checks.map((check) => (
        <EditorItem
          key={check.id}
          editor={editor}
          item={check}
          label={check.values.label || 'Without a name yet'}
          sub={check.values.when === 'after-rest' ? 'after the rest' : 'in process'}
          value={limitsText(check.values)}
          removeLabel="Take this check out"
        />
      ))}
    </ol>
    <Button icon="plus" label="Add a check" onPress={() => editor.add('check')} />
  </Card>
)

function limitsText(values: Readonly<Record<string, string>>): string {
  const { 'limits.min': min = '', 'limits.max': max = '', unit = '' } = values
  if (min === '' && max === '') return ''
  return `${min === '' ? 'up to ' : min}${min !== '' && max !== '' ? '–' : ''}${max === '' ? ' or more' : max} ${unit}`.trim()
}
