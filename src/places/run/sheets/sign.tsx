import { useState } from 'preact/hooks'
import { useFormat } from '../../../app/format'
import { SignFields, useSign } from '../../../app/sign/sign-fields'
import type { Checked } from '../../../batch/intention'
import { checked } from '../../../batch/signing'
import { titleOf } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { Notice } from '../../../parts/notice'
import { Sheet } from '../../../parts/sheet'
import { netOf } from '../../../trade/weighing'
import { peopleOf } from '../people'
import { useRun } from '../run-context'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'

/** The second person's signature under what is about to be recorded. */
export function SignSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const [asked] = useState(() => {
    const refusal = run.refusal.peek()
    return refusal?.code === 'SIGNATURE_MISSING' ? refusal.intention : null
  })
  return asked === null ? null : <Asked asked={asked} onClose={onClose} />
}

function Asked({ asked, onClose }: SheetPartProps & { asked: Checked }) {
  const run = useRun()
  const { state } = run.handle.view.value
  const draft = useSheetDraft('sign', onClose)
  const sign = useSign({ meaning: checked, person: asked.checkedBy ?? '' })
  const people = peopleOf(state, run.app.catalogue.people.value).filter(({ id }) => id !== state.person)
  const missing = sign.missing.value
  const send = async () => {
    const signature = await sign.give()
    if (signature === null) return
    const typed = run.drafts.of(asked.step)
    if (await draft.send({ ...asked, checkedBy: signature.person, signature })) run.drafts.clear(asked.step, typed)
  }
  return (
    <Sheet
      title="Checked by a second person"
      onClose={onClose}
      foot={
        <Button
          kind={missing === null && !sign.busy.value ? 'filled' : 'closed'}
          label={sign.busy.value ? 'One moment' : 'Sign and record'}
          sub={missing ?? undefined}
          onPress={() => void send()}
        />
      }
    >
      {draft.refused && run.refusal.value?.code !== 'SIGNATURE_MISSING' && (
        <Notice kind="over" title={draft.refused} live />
      )}
      <p class="sheet-quote">{useWords(asked)}</p>
      <SignFields sign={sign} label="Checked by" people={people} onEnter={() => void send()} />
    </Sheet>
  )
}

function useWords(asked: Checked): string {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const planned = state.plan.byId.get(asked.step)
  const title = planned ? titleOf(planned.step, state.header) : asked.step
  if (asked.do === 'finish-step') return [title, asked.saw].filter(Boolean).join(', ')
  const net = netOf(asked.reading)
  const stepUg = run.weighing.value?.stepUg
  return net.ok ? `${title}: ${format.massWithUnit(net.value, stepUg)}` : title
}
