import { useFormat } from '../../app/format'
import { Field } from '../../parts/form'
import { widthEm } from '../../parts/text-width'
import type { SizeUnit } from './choice'
import type { StartModel } from './model'
import { sayRefusal } from './say'
import { isVolume } from './size'

const units: readonly SizeUnit[] = ['g', 'kg', 'oz', 'lb', 'mg']

/** The batch size, large, as typed; sums are worked out under it. */
export const SizeField = ({ model }: { model: StartModel }) => {
  const format = useFormat()
  const text = model.sizeShown.value
  const { unit } = model.choice.value
  const refusal = model.sizeRefusal.value
  const sizeUg = model.sizeUg.value
  const density = model.density.value
  const worth = sizeUg !== null && (/[^\d.,\s]/.test(text.trim()) || unit === 'oz' || unit === 'lb')
  const setUnit = (next: string) => {
    const known = units.find((each) => each === next)
    if (known) model.change({ unit: known, size: text })
  }
  return (
    <div class="size">
      <Field label="Batch size" error={refusal ? sayRefusal(refusal) : undefined}>
        {(control) => (
          <span class="size-line">
            <input
              {...control}
              class="size-input"
              type="text"
              inputMode="decimal"
              autoComplete="off"
              spellcheck={false}
              value={text}
              style={{ '--size-em': Math.max(widthEm(text), 1.6) }}
              onInput={(event) => model.change({ size: event.currentTarget.value })}
            />
            <select
              class="size-unit"
              aria-label="Unit"
              value={unit}
              onChange={(event) => setUnit(event.currentTarget.value)}
            >
              {units.map((each) => (
                <option key={each} value={each}>
                  {each}
                </option>
              ))}
            </select>
          </span>
        )}
      </Field>
      {worth && (
        <p class="size-worth">
          = {format.massWithUnit(sizeUg)}
          {density !== null && isVolume(text) && ` at ${format.number(density)} g/mL`}
        </p>
      )}
    </div>
  )
}
