import { useFormat } from '../../../app/format'
import { sentenceOf } from '../../../app/refusals'
import { nameOfVessel } from '../../../batch/vessel-name'
import { Button } from '../../../parts/button'
import { TextField } from '../../../parts/form'
import { Notice } from '../../../parts/notice'
import { NumberField } from '../../../parts/number-field'
import { Sheet } from '../../../parts/sheet'
import { massIn } from '../../../trade/ledger'
import { useRun } from '../run-context'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'

/** The empty weight of a vessel, given or put right while it is full. */
export function TareSheet({ vessel, onClose }: SheetPartProps & { vessel: string }) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const draft = useSheetDraft(`tare:${vessel}`, onClose)
  const typed = run.reckoner.mass(draft.text('tare'), { negative: false, zero: false })
  const standsIn = draft.text('standsIn').trim()
  const now = state.vessels.get(vessel)?.tareUg
  const name = nameOfVessel(state, vessel)
  const send = () => {
    if (typed.kind !== 'number') return
    const parts = standsIn === '' ? {} : { standsIn }
    void draft.send({ do: 'tare', vessel, tareUg: typed.value, ...parts }, `Tare ${format.massWithUnit(typed.value)}`)
  }
  return (
    <Sheet
      title={`${name}: its tare`}
      onClose={onClose}
      foot={
        <Button
          kind={typed.kind === 'number' ? 'filled' : 'closed'}
          label="Record the tare"
          sub={typed.kind === 'number' ? undefined : 'how much empty?'}
          onPress={send}
        />
      }
    >
      {draft.refused && <Notice kind="over" title={draft.refused} live />}
      <p>
        {now === undefined ? 'It has none yet.' : `It is ${format.massWithUnit(now)} in the records.`}{' '}
        {massIn(state.ledger, vessel) > 0 &&
          'The vessel is full: weigh one like it, or read its label, with what stands in it (bar, paddle, probe, lid).'}
      </p>
      <NumberField
        label="Empty, with what stands in it"
        unit="g"
        value={draft.text('tare')}
        error={typed.kind === 'bad' ? sentenceOf(typed.refusal) : undefined}
        onChange={(text) => draft.set('tare', text)}
      />
      <TextField
        label="What stands in it"
        value={draft.text('standsIn')}
        placeholder="bar, paddle, probe"
        onChange={(text) => draft.set('standsIn', text)}
      />
    </Sheet>
  )
}
