import './scale-sheet.css'
import { useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { type Format, useFormat } from '../../app/format'
import { NumberEntry } from '../../app/forms/number-entry'
import { numberSentences } from '../../app/refusals/numbers'
import { sayFrom } from '../../app/refusals/sentences'
import type { Formula, Revision } from '../../batch/formula'
import type { ScaledBatch } from '../../batch/scaled-batch'
import { Button } from '../../parts/button'
import { Choice } from '../../parts/choice'
import { Notice } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'
import type { NumberRefusal } from '../../trade/number-text'
import { createScale, type ScaleField, type ScaleModel } from './scale-model'

interface ScaleSheetProps {
  formula: Formula
  revision: Revision
  onClose: () => void
}

/** Another batch size, or as many units as the stock gives, with what each line then weighs. */
export const ScaleSheet = ({ formula, revision, onClose }: ScaleSheetProps) => {
  const app = useApp()
  const format = useFormat()
  const model = useMemo(() => createScale(app, formula, revision), [app, formula, revision])
  const { by } = model.texts.value
  const scaled = model.scaled.value
  const none = scaled === null || scaled.sizeUg === 0
  return (
    <Sheet
      title="Scale"
      wide
      onClose={onClose}
      foot={
        <Button
          kind="filled"
          size="primary"
          icon="play"
          label={none ? 'Start with it' : `Start with ${sizeText(scaled.sizeUg, format)}`}
          disabled={none}
          onPress={() => void model.start()}
        />
      }
    >
      <Choice
        label="Reckon from"
        hideLabel
        value={by}
        options={[
          { value: 'size', label: 'A batch size' },
          { value: 'units', label: 'Units to fill' },
        ]}
        onChange={(value) => model.change({ by: value })}
      />
      {by === 'size' ? (
        <Typed model={model} field="size" label="Batch size" unit="g" hint="Another unit may stand behind it: 1.2 kg" />
      ) : (
        <UnitFields model={model} />
      )}
      {scaled && <Outcome model={model} scaled={scaled} format={format} />}
      {scaled && !none && <Lines scaled={scaled} format={format} />}
    </Sheet>
  )
}

interface TypedProps {
  model: ScaleModel
  field: ScaleField
  label: string
  unit?: string | undefined
  hint?: string | undefined
}

const Typed = ({ model, field, label, unit, hint }: TypedProps) => {
  const refusal = model.refusals.value[field]
  return (
    <NumberEntry
      label={label}
      unit={unit}
      hint={hint}
      value={model.texts.value[field]}
      error={refusal && sayFrom<NumberRefusal>(numberSentences, refusal)}
      onChange={(text) => model.change({ [field]: text })}
    />
  )
}

const UnitFields = ({ model }: { model: ScaleModel }) => {
  const { fillUnit } = model.texts.value
  return (
    <div class="scale-fields">
      <Typed model={model} field="fill" label="Fill of one" unit={fillUnit} />
      <Choice
        label="Filled by"
        value={fillUnit}
        options={[
          { value: 'mL', label: 'mL' },
          { value: 'g', label: 'g' },
        ]}
        onChange={(value) => model.change({ fillUnit: value })}
      />
      {fillUnit === 'mL' && <Typed model={model} field="density" label="Density of the product" unit="g/mL" />}
      <Typed model={model} field="loss" label="Lost on the way" unit="%" />
      <Typed model={model} field="count" label="How many" hint="Empty: as many as the stock gives" />
    </div>
  )
}

const Outcome = ({ model, scaled, format }: { model: ScaleModel; scaled: ScaledBatch; format: Format }) => {
  const units = model.units.value
  const { largest, rows, sizeUg } = scaled
  const nameOf = (id: string) => rows.find(({ materialId }) => materialId === id)?.name ?? id
  const short = [...new Set(rows.filter(({ shortUg }) => shortUg > 0).map(({ name }) => name))]
  const uncounted = [...new Set(rows.filter(({ stockUg }) => stockUg === null).map(({ name }) => name))]
  return (
    <div class="scale-outcome" aria-live="polite">
      {units !== null && sizeUg > 0 && (
        <p class="scale-units">
          <strong>{units}</strong> {units === 1 ? 'unit' : 'units'}, a batch of {sizeText(sizeUg, format)}
        </p>
      )}
      {largest && (
        <p>
          {nameOf(largest.limiting)} runs out first: the stock makes {sizeText(largest.sizeUg, format)} at most.
        </p>
      )}
      {short.length > 0 && <Notice kind="caution" title={`There is not enough of ${short.join(', ')} for this.`} />}
      {uncounted.length > 0 && (
        <p class="scale-quiet">No lot is known of {uncounted.join(', ')}, so it is not counted.</p>
      )}
    </div>
  )
}

const Lines = ({ scaled, format }: { scaled: ScaledBatch; format: Format }) => (
  <table class="scale-lines">
    <thead>
      <tr>
        <th scope="col">Line</th>
        <th scope="col">weighs</th>
        <th scope="col">in stock</th>
      </tr>
    </thead>
    <tbody>
      {scaled.rows.map(({ line, phase, name, massUg, stockUg, shortUg, materialId }) => (
        <tr key={line}>
          <th scope="row">
            <span class="letter">{phase}</span>
            {name}
          </th>
          <td>{format.massWithUnit(massUg, massUg < 1e9 ? 10_000 : 100_000)}</td>
          <td>
            {stockUg === null ? 'not known' : sizeText(stockUg, format)}
            {materialId === scaled.largest?.limiting && <span class="scale-word"> limits</span>}
            {shortUg > 0 && <span class="scale-word scale-short"> {format.massWithUnit(shortUg)} short</span>}
          </td>
        </tr>
      ))}
    </tbody>
  </table>
)

/** "500 g", "7.25 kg": four figures at most, never more than there is. */
function sizeText(massUg: number, format: Format): string {
  const [unitUg, unit] = massUg >= 1e9 ? [1e9, 'kg'] : [1e6, 'g']
  const decimals = 10 ** Math.max(0, 3 - Math.floor(Math.log10(Math.max(massUg / unitUg, 1))))
  return `${format.number(Math.floor((massUg / unitUg) * decimals + 1e-6) / decimals)}\u00a0${unit}`
}
