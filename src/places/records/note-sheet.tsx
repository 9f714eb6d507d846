import { useState } from 'preact/hooks'
import { type Refusal, sentenceOf } from '../../app/refusals'
import { recordSentences } from '../../app/refusals/forms-records'
import { sayFrom } from '../../app/refusals/sentences'
import { Button } from '../../parts/button'
import { TextField } from '../../parts/form'
import { Sheet } from '../../parts/sheet'
import type { RecordModel } from './record-model'

/** A note added to the record: it stands there with its own time and initials. */
export function NoteSheet({ model, onClose }: { model: RecordModel; onClose: () => void }) {
  const [text, setText] = useState('')
  const [error, setError] = useState('')
  const save = async () => {
    if (text.trim() === '') {
      setError(sayFrom(recordSentences, { code: 'NOTE_EMPTY' }))
      return
    }
    const refusal: Refusal | null = await model.write({ do: 'note', text })
    if (refusal === null) onClose()
    else setError(sentenceOf(refusal))
  }
  return (
    <Sheet
      title="Add a note"
      onClose={onClose}
      foot={<Button kind="filled" size="primary" label="Record the note" onPress={() => void save()} full />}
    >
      <TextField
        label="Note"
        rows={4}
        value={text}
        error={error}
        onChange={(value) => {
          setText(value)
          setError('')
        }}
      />
    </Sheet>
  )
}
