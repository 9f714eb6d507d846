import { useFormat } from '../../../app/format'
import { sentenceOf } from '../../../app/refusals'
import type { Material } from '../../../batch/catalogue'
import { vesselNow } from '../../../batch/progress'
import { Button } from '../../../parts/button'
import { SelectField, TextField } from '../../../parts/form'
import { Caution, Notice } from '../../../parts/notice'
import { NumberField } from '../../../parts/number-field'
import { ReasonChips } from '../../../parts/reason-chips'
import { Sheet } from '../../../parts/sheet'
import { hazardIcon } from '../cards/hazard-icon'
import { useRun } from '../run-context'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'
import { vesselOptions } from './vessel-options'

const otherThing = 'other'

/** A pinch of something that is not in the formula: writing it down is made the easiest thing. */
export function AddUnplannedSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const draft = useSheetDraft('unplanned', onClose)
  const materials = [...run.app.catalogue.materials.value.values()].filter(({ archived }) => !archived)
  const material = materials.find(({ id }) => id === draft.text('material'))
  const name = material?.name ?? draft.text('name')
  const into = vesselOptions(state, format, 'any')
  const here = run.planned.value ? vesselNow(state, run.planned.value.step.vessel) : into[0]?.value
  const vessel = draft.text('vessel') || here || ''
  const mass = run.reckoner.mass(draft.text('mass'), { negative: false, zero: false })
  const missing = name.trim() === '' ? 'what is it?' : mass.kind !== 'number' ? 'how much?' : undefined
  const send = () => {
    if (mass.kind !== 'number') return
    const lot = draft.text('lot')
    const parts = { ...ofMaterial(material), ...(lot ? { lot } : {}) }
    const reason = draft.text('reason').trim() || 'none given'
    const intention = { do: 'add-unplanned', name, vessel, netUg: mass.value, reason, ...parts } as const
    void draft.send(intention, `${name} ${format.massWithUnit(mass.value)}`)
  }
  return (
    <Sheet
      title="Add something not in the plan"
      onClose={onClose}
      foot={<Button kind={missing ? 'closed' : 'filled'} label="Record it" sub={missing} onPress={send} />}
    >
      {draft.refused && <Notice kind="over" title={draft.refused} live />}
      <SelectField
        label="What"
        value={draft.text('material') || otherThing}
        options={[
          { value: otherThing, label: 'Something else: its name below' },
          ...materials.map(({ id, name: label }) => ({ value: id, label })),
        ]}
        onChange={(value) => draft.set('material', value === otherThing ? '' : value)}
      />
      {material === undefined && (
        <TextField label="Its name" value={draft.text('name')} onChange={(value) => draft.set('name', value)} />
      )}
      {material?.hazards && <Caution icon={hazardIcon(material.hazards.kind)} text={material.hazards.caution} />}
      <NumberField
        label="How much"
        unit="g"
        value={draft.text('mass')}
        error={mass.kind === 'bad' ? sentenceOf(mass.refusal) : undefined}
        onChange={(value) => draft.set('mass', value)}
      />
      <SelectField label="Into" value={vessel} options={into} onChange={(value) => draft.set('vessel', value)} />
      {material && <LotField material={material} value={draft.text('lot')} onChange={(lot) => draft.set('lot', lot)} />}
      <ReasonChips
        label="Why"
        options={['too thin', 'colour', 'scent', 'to see what it does', 'forgotten in the formula']}
        other="In your own words"
        value={draft.text('reason')}
        onChange={(value) => draft.set('reason', value)}
      />
    </Sheet>
  )
}

const ofMaterial = (material: Material | undefined) => ({
  ...(material ? { materialId: material.id, material } : {}),
  ...(material?.useLevel ? { most: material.useLevel.max } : {}),
})

interface LotFieldProps {
  material: Material
  value: string
  onChange: (lot: string) => void
}

function LotField({ material, value, onChange }: LotFieldProps) {
  const run = useRun()
  const lots = [...run.app.catalogue.lots.value.values()].filter(({ materialId }) => materialId === material.id)
  if (lots.length === 0) return null
  const options = [{ value: '', label: 'not known' }, ...lots.map(({ id, code }) => ({ value: id, label: code }))]
  return <SelectField label="Lot" value={value} options={options} onChange={onChange} />
}
