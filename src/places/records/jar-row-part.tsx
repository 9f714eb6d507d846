import type { Format } from '../../app/format'
import { unitOf } from '../../batch/how-read'
import { type Measure, readsNumber } from '../../batch/stability-plan'
import { Choice } from '../../parts/choice'
import { TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { NumberField } from '../../parts/number-field'
import type { JarEntryModel, OpenJar } from './jar-entry-model'
import { shownFigure } from './stability-words'

/** The number that the pad types into. */
export interface JarField {
  readonly key: string
  readonly name: string
}

interface JarRowProps {
  jar: OpenJar
  measure: Measure
  model: JarEntryModel
  format: Format
  wrong: string | undefined
  onField: (field: JarField) => void
  onEnter: () => void
}

/** One measure of one jar: a number in the plan's unit, or what was seen. */
export function JarRowPart({ jar, measure, model, format, wrong, onField, onEnter }: JarRowProps) {
  const key = `${jar.key} ${measure.id}`
  if (readsNumber(measure))
    return (
      <div onFocusIn={() => onField({ key, name: `${measure.label}, ${jar.name}` })}>
        <NumberField
          label={measure.label}
          hint={hintOf(measure, format)}
          unit={unitOf(measure)}
          value={model.textOf(key)}
          onChange={(text) => model.set(key, text)}
          keyboard={matchMedia('(min-width: 1000px)').matches ? 'none' : 'decimal'}
          error={wrong}
          onEnter={onEnter}
        />
      </div>
    )
  const good = model.textOf(`${key} good`)
  return (
    <div class="jar-seen">
      <Choice
        label={measure.label}
        value={good === '' ? undefined : good}
        options={[
          { value: 'yes', label: 'As it should be' },
          { value: 'no', label: 'Not as it should be' },
        ]}
        onChange={(value) => model.set(`${key} good`, value)}
      />
      <TextField
        label={`${measure.label}: what you found`}
        value={model.textOf(key)}
        onChange={(text) => model.set(key, text)}
        placeholder={measure.expected}
        onEnter={onEnter}
      />
      {wrong && <Notice kind="over" title={wrong} live />}
    </div>
  )
}

function hintOf(measure: Measure, format: Format): string | undefined {
  const { min, max } = measure.limits ?? {}
  const limits =
    min !== undefined && max !== undefined
      ? `good from ${shownFigure(min, measure, format)} to ${shownFigure(max, measure, format)}`
      : min !== undefined
        ? `at least ${shownFigure(min, measure, format)}`
        : max === undefined
          ? ''
          : `at most ${shownFigure(max, measure, format)}`
  return [measure.method, limits].filter(Boolean).join('; ') || undefined
}
