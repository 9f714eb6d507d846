import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import { SpecFields } from '../../app/forms/spec-fields'
import { Button } from '../../parts/button'
import { classes } from '../../parts/classes'
import { Icon } from '../../parts/icon'
import type { DraftItem } from './draft'
import { fieldsOf } from './draft-read'
import type { EditorModel } from './editor-model'

interface EditorItemProps {
  editor: EditorModel
  item: DraftItem
  label: string
  sub?: string | undefined
  value?: string | undefined
  /** What else the open form has, under its fields. */
  children?: ComponentChildren
  removeLabel: string
}

/** One line, step, vessel or check: a row that opens into its form, with its place in the list and a way out. */
export function EditorItem({ editor, item, label, sub, value, children, removeLabel }: EditorItemProps) {
  const body = useId()
  const open = editor.open.value === item.id
  const errors = editor.fieldErrors.value[item.id] ?? {}
  const wrong = Object.keys(errors).length > 0
  return (
    <li class={classes('editor-item', open && 'editor-item-open')}>
      <button
        type="button"
        class="editor-row"
        aria-expanded={open}
        aria-controls={body}
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
      <div id={body} hidden={!open} class="editor-form">
        {open && (
          <>
            <SpecFields
              specs={fieldsOf(editor.draft.value, item.id, editor.options.value)}
              values={item.values}
              errors={errors}
              onChange={(key, text) => editor.set(item.id, key, text)}
              onLeave={() => void editor.settle()}
            />
            {children}
            <div class="editor-buttons">
              <Button label="Up" name={`${label}: up`} onPress={() => editor.move(item.id, -1)} />
              <Button label="Down" name={`${label}: down`} onPress={() => editor.move(item.id, 1)} />
              <Button icon="trash" label={removeLabel} onPress={() => editor.remove(item.id)} />
              <Button kind="outline" icon="check" label="Done" onPress={() => editor.toggle(item.id)} />
            </div>
          </>
        )}
      </div>
    </li>
  )
}
