import { useFormat } from '../../../app/format'
import { sentenceOf } from '../../../app/refusals'
import { Button } from '../../../parts/button'
import { SelectField } from '../../../parts/form'
import { Notice } from '../../../parts/notice'
import { NumberField } from '../../../parts/number-field'
import { ReasonChips } from '../../../parts/reason-chips'
import { Sheet } from '../../../parts/sheet'
import { useRun } from '../run-context'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'
import { vesselOptions } from './vessel-options'

/** Product lost from a vessel: every line in it loses its share. */
export function SpillSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const draft = useSheetDraft('spill', onClose)
  const options = vesselOptions(state, format, 'filled')
  const vessel = draft.text('vessel') || options[0]?.value || ''
  const mass = run.reckoner.mass(draft.text('mass'), { negative: false, zero: false })
  const reason = draft.text('reason')
  const missing = mass.kind !== 'number' ? 'how much?' : reason.trim() === '' ? 'say how' : undefined
  const send = () => {
    if (mass.kind === 'number') void draft.send({ do: 'spill', vessel, massUg: mass.value, reason }, 'Spilled')
  }
  return (
    <Sheet
      title="Spilled some"
      onClose={onClose}
      foot={<Button kind={missing ? 'closed' : 'filled'} label="Record the spill" sub={missing} onPress={send} />}
    >
      {draft.refused && <Notice kind="over" title={draft.refused} live />}
      <SelectField label="From" value={vessel} options={options} onChange={(value) => draft.set('vessel', value)} />
      <NumberField
        label="About how much"
        unit="g"
        value={draft.text('mass')}
        error={mass.kind === 'bad' ? sentenceOf(mass.refusal) : undefined}
        onChange={(value) => draft.set('mass', value)}
      />
      <ReasonChips
        label="How"
        options={['boiled over', 'splashed while mixing', 'knocked over', 'while pouring']}
        other="In your own words"
        value={reason}
        onChange={(value) => draft.set('reason', value)}
      />
    </Sheet>
  )
}
