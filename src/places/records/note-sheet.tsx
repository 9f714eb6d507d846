import { useState } from 'preact/hooks'
import { type Refusal, sentenceOf } from '../../app/refusals'
import { recordSentences } from '../../app/refusals/forms-records'
import { sayFrom } from '../../app/refusals/sentences'
import type { DeviationRecord } from '../../batch/record-deviations'
import { Button } from '../../parts/button'
import { Choice } from '../../parts/choice'
import { TextField } from '../../parts/form'
import { Sheet } from '../../parts/sheet'
import type { RecordModel } from './record-model'

interface NoteSheetProps {
  model: RecordModel
  deviations: readonly DeviationRecord[]
  onClose: () => void
}

/** A note added to the record, or to one of its deviations: it stands there with its own time and initials. */
export function NoteSheet({ model, deviations, onClose }: NoteSheetProps) {
  const [about, setAbout] = useState('')
  const [text, setText] = useState('')
  const [error, setError] = useState('')
  const save = async () => {
    if (text.trim() === '') {
      setError(sayFrom(recordSentences, { code: 'NOTE_EMPTY' }))
      return
    }
    const refusal: Refusal | null = await model.write({
      do: 'note',
      text,
      ...(about === '' ? {} : { deviation: about }),
    })
    if (refusal === null) onClose()
    else setError(sentenceOf(refusal))
  }
  return (
    <Sheet
      title="Add a note"
      onClose={onClose}
      foot={<Button kind="filled" size="primary" label="Record the note" onPress={() => void save()} full />}
    >
      {deviations.length > 0 && (
        <Choice
          label="About"
          stacked
          value={about}
          options={[
            { value: '', label: 'The batch' },
            ...deviations.map(({ id, number, name }) => ({
              value: id,
              label: `Deviation ${number}: ${name}`,
              sub: 'What was found out about it',
            })),
          ]}
          onChange={setAbout}
        />
      )}
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
