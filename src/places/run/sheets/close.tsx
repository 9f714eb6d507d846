import type { Disposition } from '../../../batch/kinds'
import { isDone } from '../../../batch/progress'
import type { BatchState } from '../../../batch/state'
import { titleOf } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { Choice, type ChoiceOption } from '../../../parts/choice'
import { TextField } from '../../../parts/form'
import { Notice } from '../../../parts/notice'
import { Sheet } from '../../../parts/sheet'
import { useRun } from '../run-context'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'

const decisions: readonly ChoiceOption<Disposition>[] = [
  { value: 'accept', label: 'Accept', sub: 'Fit for what it was made for' },
  { value: 'hold', label: 'Hold', sub: 'Until later checks say more' },
  { value: 'rework', label: 'Rework', sub: 'It can be put right' },
  { value: 'reject', label: 'Reject', sub: 'It goes to waste' },
]

/** The decision about a batch, with what is still open named beside it. */
export function CloseSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const { state } = run.handle.view.value
  const draft = useSheetDraft('close', onClose)
  const open = stillOpen(state)
  const decision = decisions.find(({ value }) => value === draft.text('decision'))?.value
  const note = draft.text('note').trim()
  const missing =
    decision === undefined ? 'choose one' : open.length > 0 && note === '' ? 'say why it is closed so' : undefined
  const send = () => {
    if (decision !== undefined) void draft.send({ do: 'close', decision, ...(note === '' ? {} : { note }) })
  }
  return (
    <Sheet
      title="Close the batch"
      onClose={onClose}
      foot={<Button kind={missing ? 'closed' : 'filled'} label="Close the batch" sub={missing} onPress={send} />}
    >
      {draft.refused && <Notice kind="over" title={draft.refused} live />}
      {open.length > 0 && (
        <Notice
          kind="caution"
          title={`Still open: ${open.slice(0, 4).join(', ')}${open.length > 4 ? ` and ${open.length - 4} more` : ''}`}
        />
      )}
      <Choice
        label="What becomes of it"
        value={decision}
        options={decisions}
        stacked
        onChange={(value) => draft.set('decision', value)}
      />
      <TextField
        label={open.length > 0 ? 'Why it is closed so' : 'A word about it, if you like'}
        rows={3}
        value={draft.text('note')}
        onChange={(text) => draft.set('note', text)}
      />
    </Sheet>
  )
}

function stillOpen(state: BatchState): readonly string[] {
  const steps = state.plan.steps.filter(({ id }) => !isDone(state, id)).map(({ step }) => titleOf(step, state.header))
  return steps
}
