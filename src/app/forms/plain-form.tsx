import './spec-fields.css'
import type { ComponentChildren } from 'preact'
import { useEffect } from 'preact/hooks'
import { Button } from '../../parts/button.tsx'
import { Notice } from '../../parts/notice.tsx'
import type { FormModel } from './form-model.ts'
import { SpecFields } from './spec-fields.tsx'

interface PlainFormProps {
  form: FormModel
  saveLabel?: string | undefined
  onSaved: () => void
  onCancel?: (() => void) | undefined
  children?: ComponentChildren
}

/** The fields of a form with Save under them, and the way back to what was before. */
export const PlainForm = ({ form, saveLabel = 'Save', onSaved, onCancel, children }: PlainFormProps) => {
  useEffect(() => void form.load(), [form])
  const save = async () => {
    if (await form.save()) onSaved()
  }
  const leave = async () => {
    await form.discard()
    onCancel?.()
  }
  const wrong = Object.keys(form.errors.value).length
  return (
    <div class="plain-form">
      <SpecFields
        specs={form.specs}
        values={form.values.value}
        errors={form.errors.value}
        onChange={form.set}
        onLeave={() => void form.settle()}
      />
      {children}
      <div aria-live="polite">
        {form.refusal.value && <Notice kind="over" title={form.refusal.value} />}
        {wrong > 0 && (
          <Notice
            kind="over"
            title={wrong === 1 ? 'One field is not right yet.' : `${wrong} fields are not right yet.`}
          />
        )}
      </div>
      <div class="plain-form-buttons">
        <Button kind="filled" icon="check" label={saveLabel} onPress={() => void save()} />
        {(onCancel || form.changed.value) && (
          <Button
            icon="undo"
            label={form.changed.value ? 'Leave it as it was' : 'Close'}
            onPress={() => void leave()}
          />
        )}
      </div>
    </div>
  )
}
