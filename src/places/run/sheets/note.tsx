import { Button } from '../../../parts/button'
import { TextField } from '../../../parts/form'
import { Notice } from '../../../parts/notice'
import { Sheet } from '../../../parts/sheet'
import { useRun } from '../run-context'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'

export function NoteSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const draft = useSheetDraft('note', onClose)
  const text = draft.text('text')
  const step = run.stepId.value
  const send = () => void draft.send({ do: 'note', text, ...(step === null ? {} : { step }) }, 'Note')
  return (
    <Sheet
      title="Note"
      onClose={onClose}
      foot={<Button kind={text.trim() === '' ? 'closed' : 'filled'} label="Write it down" onPress={send} />}
    >
      {draft.refused && <Notice kind="over" title={draft.refused} live />}
      <TextField
        label="What you see, smell or did"
        rows={4}
        value={text}
        onChange={(value) => draft.set('text', value)}
      />
    </Sheet>
  )
}
