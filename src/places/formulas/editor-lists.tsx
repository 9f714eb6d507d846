import { useComputed } from '@preact/signals'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import type { DraftItem } from './draft'
import { EditorItem } from './editor-item'
import type { EditorModel } from './editor-model'

/** The vessels and cups that the procedure names. */
export const EditorVessels = ({ editor }: { editor: EditorModel }) => (
  <EditorList
    editor={editor}
    name="vessels"
    title="Vessels"
    labelOf={({ name }) => name || 'Without a name yet'}
    subOf={({ kind = '', holds = '' }) => [kind, holds].filter(Boolean).join(' · ')}
    removeLabel="Take this vessel out"
    addLabel="Add a vessel or cup"
    onAdd={() => editor.add('vessel')}
  />
)

/** What is measured, and what it must be. */
export const EditorChecks = ({ editor }: { editor: EditorModel }) => (
  <EditorList
    editor={editor}
    name="checks"
    title="Specification"
    labelOf={({ label }) => label || 'Without a name yet'}
    subOf={({ when }) => (when === 'after-rest' ? 'after the rest' : 'in process')}
    endOf={(values) => limitsText(values['limits.min'], values['limits.max'], values.unit)}
    removeLabel="Take this check out"
    addLabel="Add a check"
    onAdd={() => editor.add('check')}
  />
)

/** Limits over several lines together, which every way on after a deviation keeps. */
export const EditorLimits = ({ editor }: { editor: EditorModel }) => (
  <EditorList
    editor={editor}
    name="limits"
    title="Limits over several lines"
    hint="Of one INCI constituent, of active matter, or of all materials that do the same: a way on after a deviation keeps them."
    labelOf={({ name }) => name || 'Without a name yet'}
    subOf={(values) => values['of.name'] ?? values['of.class'] ?? values['of.function'] ?? ''}
    endOf={({ min, max }) => limitsText(min, max, '%')}
    removeLabel="Take this limit out"
    addLabel="Add a limit"
    onAdd={() => editor.add('limit')}
  />
)

type Values = DraftItem['values']

interface EditorListProps {
  editor: EditorModel
  name: 'vessels' | 'checks' | 'limits'
  title: string
  hint?: string
  labelOf: (values: Values) => string
  subOf: (values: Values) => string
  endOf?: (values: Values) => string
  removeLabel: string
  addLabel: string
  onAdd: () => void
}

function EditorList(props: EditorListProps) {
  const { editor, name, title, hint, labelOf, subOf, endOf, removeLabel, addLabel, onAdd } = props
  const items = useComputed(() => editor.draft.value[name]).value
  return (
    <div class="editor-part" id={`editor-${name}`} data-drop-family={name}>
      <Card labelledBy={`editor-${name}-head`}>
        <h2 id={`editor-${name}-head`}>{title}</h2>
        {hint && <p class="formulas-hint">{hint}</p>}
        <ol class="editor-items" aria-label={title} data-drop-list={name}>
          {items.map((item, at) => (
            <EditorItem
              key={item.id}
              editor={editor}
              item={item}
              label={labelOf(item.values)}
              sub={subOf(item.values)}
              value={endOf?.(item.values)}
              removeLabel={removeLabel}
              onStep={(by) => editor.move(item.id, by)}
              onDrop={(to) => editor.moveTo(item.id, at, to.at)}
            />
          ))}
        </ol>
        <Button icon="plus" label={addLabel} onPress={onAdd} />
      </Card>
    </div>
  )
}

function limitsText(min = '', max = '', unit = ''): string {
  if (min === '' && max === '') return ''
  if (min === '') return `${max} ${unit} at most`
  return max === '' ? `${min} ${unit} at least` : `${min}–${max} ${unit}`.trim()
}
