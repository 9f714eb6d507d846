import './sheets.css'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { NumberEntry } from '../../app/forms/number-entry'
import { showNumber } from '../../app/forms/show-fields'
import { SelectField, TextField } from '../../parts/form'
import { Sheet } from '../../parts/sheet'
import type { VesselChoice } from './choice'
import { sayRefusal } from './say'
import type { StartProps } from './shared'
import { noVessel, type VesselRow } from './vessels'

interface VesselsSheetProps extends StartProps {
  onClose: () => void
}

/** What stands for each vessel of the formula, what it weighs, what stands in it, and how much it holds. */
export const VesselsSheet = ({ model, house, setUp, onClose }: VesselsSheetProps) => (
  <Sheet title="Vessels" wide onClose={onClose} closeLabel="Done">
    {setUp.vessels.map((row) => (
      <VesselFields
        key={row.need.id}
        row={row}
        chosen={model.choice.value.vessels[row.need.id]}
        options={house.vessels.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={(next) =>
          model.change((choice) => ({ ...choice, vessels: { ...choice.vessels, [row.need.id]: next } }))
        }
      />
    ))}
  </Sheet>
)

interface VesselFieldsProps {
  row: VesselRow
  chosen: VesselChoice | undefined
  options: readonly { value: string; label: string }[]
  onChange: (next: VesselChoice) => void
}

const VesselFields = ({ row, chosen, options, onChange }: VesselFieldsProps) => {
  const format = useFormat()
  const mark = useApp().settings.decimalMark.value
  const { need, kept, vessel, peakUg } = row
  const now: VesselChoice = chosen ?? { ...noVessel, kept: kept?.id ?? '' }
  const keptTare = kept?.tareUg === undefined || now.standsIn.trim() !== '' ? '' : showNumber(kept.tareUg / 1e6, mark)
  const capacity = kept ? showNumber(kept.capacityUg / 1e6, mark) : ''
  return (
    <fieldset class="start-group">
      <legend>
        {vessel.name} <span class="start-quiet">up to {format.massWithUnit(peakUg)} goes in</span>
      </legend>
      <div class="start-fields">
        <SelectField
          label="Which one"
          value={now.kept}
          options={[{ value: '', label: 'Another one' }, ...options]}
          onChange={(id) => onChange({ ...noVessel, standsIn: now.standsIn, kept: id })}
        />
        <NumberEntry
          label="Tare"
          unit="g"
          value={now.tare === '' ? keptTare : now.tare}
          hint={vessel.tareUg === undefined ? 'Not known yet: weigh it empty.' : 'with what stands in it'}
          error={row.tareRefusal ? sayRefusal(row.tareRefusal) : undefined}
          onChange={(tare) => onChange({ ...now, tare })}
        />
        <TextField
          label="What stands in it"
          hint={need.holds ? `The formula puts a ${need.holds} in it.` : 'bar, paddle, probe'}
          value={now.standsIn}
          onChange={(standsIn) => onChange({ ...now, standsIn })}
        />
        <NumberEntry
          label="Holds"
          unit="g"
          value={now.capacity === '' ? capacity : now.capacity}
          error={row.capacityRefusal ? sayRefusal(row.capacityRefusal) : undefined}
          onChange={(text) => onChange({ ...now, capacity: text })}
        />
      </div>
    </fieldset>
  )
}
