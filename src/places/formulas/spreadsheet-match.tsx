import type { ReadLine } from '../../app/import/table/understood'
import { Button } from '../../parts/button'
import { newMaterial } from './spreadsheet-kept'
import type { SpreadsheetModel } from './spreadsheet-model'

interface MatchProps {
  model: SpreadsheetModel
  line: ReadLine
  /** The row was opened, so that what was said can be said otherwise. */
  isOpen: boolean
}

/** What a line may be of the house: one tap says it is, or that it is another material. */
export function SpreadsheetMatch({ model, line, isOpen }: MatchProps) {
  const { match, said } = model.matchOf(line)
  if (match.kind !== 'near' || (said !== undefined && !isOpen)) return null
  return (
    <fieldset class="sheet-match">
      <legend>Is {line.name} one of these?</legend>
      {match.candidates.map(({ material, why }) => (
        <Button
          key={material.id}
          kind={said === material.id ? 'outline' : 'quiet'}
          pressed={said === material.id}
          label={`It is ${material.name}`}
          sub={
            why === 'spelling'
              ? 'nearly the same spelling'
              : material.inci.map(({ name }) => name).join(', ') || material.function
          }
          onPress={() => model.say(line, material.id)}
        />
      ))}
      <Button
        kind={said === newMaterial ? 'outline' : 'quiet'}
        pressed={said === newMaterial}
        label="No, a new material"
        sub="its data is filled in later"
        onPress={() => model.say(line, newMaterial)}
      />
    </fieldset>
  )
}
