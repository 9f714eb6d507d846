import { useFormat } from '../../../app/format'
import { SelectField } from '../../../parts/form'
import { Notice } from '../../../parts/notice'
import { PressAndHold } from '../../../parts/press-and-hold'
import { ReasonChips } from '../../../parts/reason-chips'
import { Sheet } from '../../../parts/sheet'
import { useRun } from '../run-context'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'
import { vesselOptions } from './vessel-options'

/** A cup thrown away: its mass is booked as discarded and its lines are weighed again. It cannot be undone, so: hold. */
export function DiscardCupSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const draft = useSheetDraft('discard-cup', onClose)
  const options = vesselOptions(run.handle.view.value.state, useFormat(), 'cups')
  const vessel = draft.text('vessel') || options[0]?.value || ''
  const reason = draft.text('reason')
  if (options.length === 0)
    return (
      <Sheet title="Discard a cup" onClose={onClose}>
        <p>No cup has anything in it. What is in a vessel cannot be thrown away by itself.</p>
      </Sheet>
    )
  return (
    <Sheet
      title="Discard a cup"
      onClose={onClose}
      foot={
        reason.trim() !== '' && (
          <PressAndHold
            icon="trash"
            label="Discard it"
            onDone={() => void draft.send({ do: 'discard-cup', vessel, reason })}
          />
        )
      }
    >
      {draft.refused && <Notice kind="over" title={draft.refused} live />}
      <SelectField label="Which" value={vessel} options={options} onChange={(value) => draft.set('vessel', value)} />
      <ReasonChips
        label="Why"
        options={['weighed far over', 'wrong material', 'contaminated', 'stood too long']}
        other="In your own words"
        value={reason}
        onChange={(value) => draft.set('reason', value)}
      />
    </Sheet>
  )
}
