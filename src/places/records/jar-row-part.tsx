import { NumberEntry } from '../../app/forms/number-entry'
import { unitOf } from '../../batch/how-read'
import { readsNumber } from '../../batch/stability-plan'
import { Choice } from '../../parts/choice'
import { TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { hintOf, type JarRowProps, keyboardBesidePad } from './jar-field'
import { viscosityRow } from './jar-row'
import { JarViscosity } from './jar-viscosity'

/** One measure of one jar: a number in the plan's unit, or what was seen. */
export function JarRowPart(props: JarRowProps) {
  const { jar, measure, model, format, wrongAt, onField, onEnter } = props
  const key = `${jar.key} ${measure.id}`
  const row = viscosityRow(key, measure)
  if (row) return <JarViscosity {...props} row={row} />
  const wrong = wrongAt(key)
  if (readsNumber(measure))
    return (
      <div onFocusIn={() => onField({ key, name: `${measure.label}, ${jar.name}` })}>
        <NumberEntry
          label={measure.label}
          hint={hintOf(measure, format)}
          unit={unitOf(measure)}
          value={model.textOf(key)}
          onChange={(text) => model.set(key, text)}
          keyboard={keyboardBesidePad()}
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
