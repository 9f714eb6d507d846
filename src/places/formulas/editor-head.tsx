import { useComputed } from '@preact/signals'
import { useState } from 'preact/hooks'
import { SpecFields } from '../../app/forms/spec-fields'
import { Card } from '../../parts/card'
import { Icon } from '../../parts/icon'
import { noSentences } from './editor-errors'
import type { EditorModel } from './editor-model'
import { headFields } from './fields'

/** What the formula is called and how it is made as a whole: one line once that is said, open while it is new or wrong. */
export function EditorHead({ editor }: { editor: EditorModel }) {
  const head = useComputed(() => editor.draft.value.head).value
  const errors = useComputed(() => editor.fieldErrors.value.head ?? noSentences).value
  const [opened, setOpened] = useState(editor.draft.peek().from === null)
  const open = opened || Object.keys(errors).length > 0
  const { code, contact, usualSizeUg, note } = head.values
  return (
    <div class="editor-part" id="editor-head">
      <Card label="The formula">
        <button type="button" class="editor-about" aria-expanded={open} onClick={() => setOpened(!opened)}>
          <span class="editor-about-words">
            <strong>About the formula</strong>
            <span class="editor-row-sub">
              {[code, contact, usualSizeUg && `usually ${usualSizeUg} g`, note].filter(Boolean).join(' · ')}
            </span>
          </span>
          <Icon name={open ? 'chevron-down' : 'chevron-right'} />
        </button>
        {open && (
          <SpecFields
            specs={headFields}
            values={head.values}
            errors={errors}
            onChange={(key, text) => editor.set('head', key, text)}
            onLeave={() => void editor.settle()}
          />
        )}
      </Card>
    </div>
  )
}
