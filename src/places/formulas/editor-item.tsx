import './editor-item.css'
import { useComputed } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { SpecFields } from '../../app/forms/spec-fields'
import { Button } from '../../parts/button'
import { classes } from '../../parts/classes'
import type { DropPlace } from '../../parts/drag-rows'
import { Grip } from '../../parts/grip'
import { Icon } from '../../parts/icon'
import type { DraftItem } from './draft'
import { fieldsOf } from './draft-options'
import { noSentences } from './editor-errors'
import type { EditorModel } from './editor-model'

interface EditorItemProps {
  editor: EditorModel
  item: DraftItem
  label: string
  sub?: ComponentChildren
  value?: string | undefined
  /** What stands at the right end in place of a value: a field to type in. */
  entry?: ComponentChildren
  /** Keys of the form that the row itself shows. */
  without?: readonly string[]
  /** What else the open form has, under its fields. */
  children?: ComponentChildren
  removeLabel: string
  onStep: (by: -1 | 1) => void
  onDrop: (to: DropPlace) => void
}

/** One line, step, vessel, check or limit: a row with its handle that opens into its form. */
export function EditorItem(props: EditorItemProps) {
  const { editor, item, label, sub, value, entry, without = [], children, removeLabel, onStep, onDrop } = props
  const body = `form-${item.id}`
  const open = useComputed(() => editor.open.value === item.id).value
  const errors = useComputed(() => editor.fieldErrors.value[item.id] ?? noSentences).value
  const here = Object.entries(errors).filter(([key]) => without.includes(key))
  const wrong = Object.keys(errors).length > here.length
  return (
    <li class={classes('editor-item', open && 'editor-item-open')}>
      <div class="editor-row">
        <Grip name={label} id={`grip-${item.id}`} onStep={onStep} onDrop={onDrop} />
        <button
          type="button"
          class="editor-row-main"
          aria-expanded={open}
          aria-controls={open ? body : undefined}
          onClick={() => editor.toggle(item.id)}
        >
          <span class="editor-row-words">
            <span class="editor-row-label">{label}</span>
            {sub && <span class="editor-row-sub">{sub}</span>}
          </span>
          {wrong && (
            <span class="editor-row-wrong">
              <Icon name="triangle-alert" size={20} /> to mend
            </span>
          )}
          {value && <span class="editor-row-value">{value}</span>}
          <Icon name={open ? 'chevron-down' : 'chevron-right'} />
        </button>
        {entry}
      </div>
      {here.map(([key, sentence]) => (
        <p key={key} class="field-error editor-row-error" id={`error-${item.id}`} aria-live="polite">
          <Icon name="triangle-alert" size={20} />
          <span>{sentence}</span>
        </p>
      ))}
      {open && (
        <div id={body} class="editor-form">
          <SpecFields
            specs={fieldsOf(editor.draft.value, item, editor.options.value).filter(({ key }) => !without.includes(key))}
            values={item.values}
            errors={errors}
            onChange={(key, text) => editor.set(item.id, key, text)}
            onLeave={() => void editor.settle()}
          />
          {children}
          <div class="editor-buttons">
            <Button icon="arrow-up" label="Up" name={`Up: ${label}`} onPress={() => onStep(-1)} />
            <Button icon="arrow-down" label="Down" name={`Down: ${label}`} onPress={() => onStep(1)} />
            <Button icon="trash" label={removeLabel} onPress={() => editor.remove(item.id)} />
            <Button kind="outline" icon="check" label="Done" onPress={() => editor.toggle(item.id)} />
          </div>
        </div>
      )}
    </li>
  )
}
