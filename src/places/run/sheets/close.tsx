import { useFormat } from '../../../app/format'
import { LossPicture } from '../../../app/loss-picture'
import type { Disposition } from '../../../batch/kinds'
import { isDone } from '../../../batch/progress'
import { type LossCheck, lossCheckOf } from '../../../batch/reconciliation'
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
  const loss = lossCheckOf(state)
  const asks = open.length > 0 || loss.isFlagged
  const missing = decision === undefined ? 'choose one' : asks && note === '' ? 'say why it is closed so' : undefined
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
      {loss.sums.addedUg > 0 && <WhereItWent loss={loss} />}
      <Choice
        label="What becomes of it"
        value={decision}
        options={decisions}
        stacked
        onChange={(value) => draft.set('decision', value)}
      />
      <TextField
        label={asks ? 'Why it is closed so' : 'A word about it, if you like'}
        rows={3}
        value={draft.text('note')}
        onChange={(text) => draft.set('note', text)}
      />
    </Sheet>
  )
}

/** The reconciliation, where the decision is made; more unexplained than the formula lets pass is said first. */
function WhereItWent({ loss }: { loss: LossCheck }) {
  const format = useFormat()
  const { sums, limitUg, isFlagged } = loss
  const { unexplainedUg, filledUg, theoreticalUg } = sums
  return (
    <section class="close-sums" aria-label="Where it all went">
      {isFlagged && unexplainedUg !== null && (
        <Notice
          kind="over"
          title={`${format.massWithUnit(Math.abs(unexplainedUg))} ${unexplainedUg > 0 ? 'is unexplained' : 'more is there than the books know of'}`}
        >
          <p>
            The formula lets {format.massWithUnit(limitUg ?? 0)} pass. Write down what was spilled or thrown away, or
            say below what became of it.
          </p>
        </Notice>
      )}
      {filledUg > 0 && (
        <p>
          Yield <strong>{format.percent(filledUg / theoreticalUg)}</strong> filled,{' '}
          <strong>{format.percent(sums.outFraction)}</strong> with the samples.
        </p>
      )}
      <LossPicture check={loss} format={format} />
    </section>
  )
}

function stillOpen(state: BatchState): readonly string[] {
  const steps = state.plan.steps.filter(({ id }) => !isDone(state, id)).map(({ step }) => titleOf(step, state.header))
  return steps
}
