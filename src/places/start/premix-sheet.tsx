import './sheets.css'
import { useState } from 'preact/hooks'
import { useFormat } from '../../app/format'
import { premixSentences } from '../../app/refusals/forms-start'
import { sayFrom } from '../../app/refusals/sentences'
import { type PremixRefusal, withPremixes } from '../../batch/premix'
import type { PremixRecipe } from '../../batch/premix-recipe'
import { Button } from '../../parts/button'
import { Choice } from '../../parts/choice'
import { SelectField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'
import { premixChoices } from './premixes'
import { nameOfLine } from './set-up'
import type { StartProps } from './shared'
import { withPremix } from './ways'

interface PremixSheetProps extends StartProps {
  /** All of one line, the likeliest first. */
  recipes: readonly PremixRecipe[]
  onClose: () => void
}

/** A line too small to weigh: what it is diluted in and how far, what is weighed for it, and the lines as they become. */
export const PremixSheet = ({ model, setUp, house, recipes, onClose }: PremixSheetProps) => {
  const format = useFormat()
  const [into, setInto] = useState(recipes[0]?.into ?? '')
  const [oneIn, setOneIn] = useState(recipes[0]?.oneIn ?? 10)
  const ofCarrier = recipes.filter((each) => each.into === into)
  const recipe = ofCarrier.find((each) => each.oneIn === oneIn) ?? ofCarrier[0]
  if (!recipe) return null
  const { line } = recipe
  const take = withPremix(line, { into: recipe.into, oneIn: recipe.oneIn })
  const tried = withPremixes(setUp.revision, premixChoices(take(model.choice.value)), house.materials)
  const name = nameOfLine(setUp, line)
  const carrier = nameOfLine(setUp, recipe.into)
  const stepUg = (setUp.plan.ok && setUp.plan.value.lines.get(line)?.balance.stepUg) || undefined
  const mass = (massUg: number) => format.massWithUnit(massUg, stepUg)
  return (
    <Sheet
      title={`Pre-mix ${name}`}
      onClose={onClose}
      foot={
        <Button
          kind="filled"
          size="primary"
          label="Weigh it so"
          disabled={!tried.ok}
          onPress={() => {
            model.change(take)
            onClose()
          }}
        />
      }
    >
      <SelectField
        label="Diluted in"
        value={recipe.into}
        options={[...new Set(recipes.map((each) => each.into))].map((id) => ({
          value: id,
          label: nameOfLine(setUp, id),
        }))}
        onChange={setInto}
      />
      <Choice
        label="One part in"
        value={String(recipe.oneIn)}
        options={ofCarrier.map((each) => ({ value: String(each.oneIn), label: String(each.oneIn) }))}
        onChange={(value) => setOneIn(Number(value))}
      />
      <p>
        Make it from <strong>{mass(recipe.neatUg)}</strong> of {name} and <strong>{mass(recipe.thinnerUg)}</strong> of{' '}
        {carrier}. Weigh <strong>{mass(recipe.doseUg)}</strong> of it into the batch; the rest is not used.
      </p>
      <p class="start-quiet">Try a drop first: it has to dissolve and stay clear.</p>
      <Corrected recipe={recipe} setUp={setUp} mass={mass} />
      {!tried.ok && (
        <Notice
          kind="over"
          title={sayFrom(
            premixSentences,
            named(tried.refusal, (id) => nameOfLine(setUp, id)),
          )}
        />
      )}
    </Sheet>
  )
}

interface CorrectedProps extends Pick<StartProps, 'setUp'> {
  recipe: PremixRecipe
  mass: (massUg: number) => string
}

const Corrected = ({ recipe, setUp, mass }: CorrectedProps) => {
  const plan = setUp.plan.ok ? setUp.plan.value : null
  const was = (line: string) => plan?.lines.get(line)?.targetUg ?? 0
  const rows = [
    { line: recipe.line, becomes: recipe.doseUg, of: `, 1 in ${recipe.oneIn}` },
    { line: recipe.into, becomes: recipe.carrierLeftUg, of: '' },
  ]
  return (
    <table class="start-stock">
      <caption>The lines as they become</caption>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">was</th>
          <th scope="col">becomes</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ line, becomes, of }) => (
          <tr key={line}>
            <th scope="row">
              {nameOfLine(setUp, line)}
              {of}
            </th>
            <td>{mass(was(line))}</td>
            <td>{mass(becomes)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** A refusal names lines by id; a person knows them by name. */
function named(refusal: PremixRefusal, name: (line: string) => string): PremixRefusal {
  switch (refusal.code) {
    case 'PREMIX_CIRCULAR':
      return { ...refusal, lines: refusal.lines.map(name) }
    case 'PREMIX_TOO_MUCH':
    case 'PREMIX_OF_PREMIX':
      return { ...refusal, line: name(refusal.line), into: name(refusal.into) }
    case 'PREMIX_NOT_A_SHARE':
    case 'PREMIX_LINE_GONE':
      return { ...refusal, line: name(refusal.line) }
  }
}
