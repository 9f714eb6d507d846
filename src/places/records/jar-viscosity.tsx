import './rested.css'
import { standardOf } from '../../batch/read-unlike'
import { Button } from '../../parts/button'
import type { JarEntryModel, OpenJar } from './jar-entry-model'
import { hintOf, type JarRowProps, keyboardBesidePad } from './jar-field'
import { fieldKey } from './jar-row'
import { type RowForm, ViscosityFields } from './reading-fields'
import { readRow } from './rested-result'
import type { RestedRow } from './rested-row'
import { RestedSoFar } from './rested-so-far'

/** A jar's viscosity, read and written down as the batch's own is. */
export function JarViscosity({
  row,
  jar,
  measure,
  model,
  format,
  wrongAt,
  onField,
  onEnter,
}: JarRowProps & { row: RestedRow }) {
  const keyOf = (field: string): string => fieldKey(row.key, field)
  const form: RowForm = {
    row,
    text: (field) => model.textOf(keyOf(field)),
    set: (field, text) => model.set(keyOf(field), text),
    wrong: (field) => wrongAt(keyOf(field)),
    onEnter,
    onField: (field, label) => onField(field === '' ? null : { key: keyOf(field), name: `${label}, ${jar.name}` }),
    keyboard: keyboardBesidePad(),
  }
  const read = readRow(row, form.text)
  const before = alikeBefore(model, jar, measure.id)
  return (
    <div class="jar-viscosity">
      <ViscosityFields form={form} label={measure.label} hint={hintOf(measure, format)} />
      {before && (
        <span class="rested-wide">
          <Button icon="copy" label={`Spindle and speed as ${before.name}`} onPress={() => before.take(form)} />
        </span>
      )}
      <div class="jar-viscosity-sofar">
        <RestedSoFar
          row={row}
          result={read === null || 'refusal' in read ? null : read}
          format={format}
          standard={jar.standards.get(measure.id) ?? standardOf(measure.method)}
        />
      </div>
    </div>
  )
}

const settings = ['spindle', 'rpm'] as const

/** The last jar before this one that says how it was read, while this one does not. */
function alikeBefore(model: JarEntryModel, jar: OpenJar, measure: string) {
  const textOf = (of: OpenJar, field: string): string => model.textOf(fieldKey(`${of.key} ${measure}`, field))
  const says = (of: OpenJar): boolean => settings.some((field) => textOf(of, field).trim() !== '')
  const all = model.jars.value ?? []
  const before = all.slice(0, all.indexOf(jar)).findLast(says)
  if (before === undefined || says(jar)) return null
  return {
    name: before.name,
    take: (form: RowForm) => {
      for (const field of settings) form.set(field, textOf(before, field))
    },
  }
}
