import { useFormat } from '../../../app/format'
import { LossPicture } from '../../../app/loss-picture'
import { SignFields, useSign } from '../../../app/sign/sign-fields'
import { given, type SignModel } from '../../../app/sign/sign-model'
import type { Disposition } from '../../../batch/kinds'
import { isDone } from '../../../batch/progress'
import { type LossCheck, lossCheckOf } from '../../../batch/reconciliation'
import { checked, performed } from '../../../batch/signing'
import type { BatchState } from '../../../batch/state'
import { titleOf } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { Choice, type ChoiceOption } from '../../../parts/choice'
import { TextField } from '../../../parts/form'
import { Notice } from '../../../parts/notice'
import { Sheet } from '../../../parts/sheet'
import { peopleOf } from '../people'
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
  const people = peopleOf(state, run.app.catalogue.people.value)
  const performs = useSign({ meaning: performed, person: state.person })
  const checks = useSign({ meaning: checked, person: '' })
  const missing = missingIn(decision, asks && note === '', performs, checks)
  const send = async () => {
    if (decision === undefined || missing !== undefined) return
    const by = await given([performs, ...(checks.person.value === '' ? [] : [checks])])
    if (by === null) return
    const signatures = { by, seen: state.lastHash }
    await draft.send({ do: 'close', decision, ...(note === '' ? {} : { note }), signatures })
  }
  return (
    <Sheet
      title="Close the batch"
      onClose={onClose}
      foot={
        <Button
          kind={missing ? 'closed' : 'filled'}
          label="Close the batch"
          sub={missing}
          onPress={() => void send()}
        />
      }
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
      <SignFields sign={performs} label="Performed by" people={people} />
      <SignFields
        sign={checks}
        label="Checked by, if somebody did"
        people={people.filter(({ id }) => id !== performs.signer.value)}
        optional
      />
    </Sheet>
  )
}

function missingIn(
  decision: Disposition | undefined,
  silent: boolean,
  performs: SignModel,
  checks: SignModel,
): string | undefined {
  if (decision === undefined) return 'choose one'
  if (silent) return 'say why it is closed so'
  const unsigned = performs.missing.value ?? (checks.person.value === '' ? null : checks.missing.value)
  return unsigned ?? undefined
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
