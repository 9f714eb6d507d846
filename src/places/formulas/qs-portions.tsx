import './share-entry.css'
import { useFormat } from '../../app/format'
import { NumberEntry } from '../../app/forms/number-entry'
import { Button } from '../../parts/button'
import type { DraftItem } from './draft'
import type { EditorModel } from './editor-model'
import { qsShares } from './total'

/** Where the q.s. line is weighed: in one step or several, each with its share or what is left, and what is held back. */
export function QsPortions({ editor, line }: { editor: EditorModel; line: DraftItem }) {
  const steps = editor.draft.value.steps.filter(({ values }) => values.kind === 'weigh' && values.line === line.id)
  const labels = editor.options.value.steps
  const stepName = (id: string) => labels.find(({ value }) => value === id)?.label ?? ''
  return (
    <fieldset class="portions">
      <legend>Weighed in {steps.length === 1 ? 'one step' : `${steps.length} steps`}</legend>
      {steps.map((step) => (
        <div key={step.id} class="portion">
          <NumberEntry
            label={`Step ${stepName(step.id)}`}
            hint="share of the batch; empty: all that is left"
            unit="%"
            value={step.values.portion ?? ''}
            error={editor.fieldErrors.value[step.id]?.portion}
            onChange={(text) => editor.set(step.id, 'portion', text)}
          />
          {steps.length > 1 && (
            <Button
              icon="trash"
              label="Take out"
              name={`Take out step ${stepName(step.id)}`}
              onPress={() => editor.remove(step.id)}
            />
          )}
        </div>
      ))}
      <HeldBack editor={editor} line={line} />
      <Button icon="split" label="Weigh part of it in another step" onPress={() => editor.split(line.id)} />
    </fieldset>
  )
}

/** What a plan will do with the q.s. line, in one sentence. */
function HeldBack({ editor, line }: { editor: EditorModel; line: DraftItem }) {
  const format = useFormat()
  const { portions, heldBack, adjusters, rest } = qsShares(editor.draft.value, line, editor.world.value)
  const text = (share: number) => format.percent(share, 3)
  return (
    <p class="portions-says">
      {portions > 0 && `${text(portions)} in portions, `}
      {text(heldBack)} held back{adjusters > 0 && `, ${text(adjusters)} of it for the adjusters`}
      {rest === null ? '. No step takes the rest.' : `, ${text(rest)} as the rest.`}
    </p>
  )
}
