import { useComputed } from '@preact/signals'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { SelectField } from '../../parts/form'
import type { DraftItem } from './draft'
import { EditorItem } from './editor-item'
import type { EditorModel } from './editor-model'
import type { Options } from './fields'
import { stepKinds } from './step-fields'

/** The procedure: every step in its order, and a new one of any kind. */
export function EditorSteps({ editor }: { editor: EditorModel }) {
  const steps = useComputed(() => editor.draft.value.steps).value
  return (
    <div class="editor-part" id="editor-steps" data-drop-family="steps">
      <Card labelledBy="editor-steps-head">
        <h2 id="editor-steps-head">Procedure</h2>
        <ol class="editor-items" aria-label="Steps" data-drop-list="steps">
          {steps.map((step, at) => (
            <StepItem key={step.id} editor={editor} step={step} at={at} />
          ))}
        </ol>
        <MissingSteps editor={editor} />
        <SelectField
          label="Add a step"
          value=""
          options={[{ value: '', label: 'choose what it does' }, ...stepKinds]}
          onChange={(kind) => kind !== '' && editor.addStep(kind)}
        />
      </Card>
    </div>
  )
}

function StepItem({ editor, step, at }: { editor: EditorModel; step: DraftItem; at: number }) {
  const label = useComputed(() => editor.names.value.steps.get(step.id)).value
  const sub = useComputed(() => subOf(step.values, editor.options.value)).value
  return (
    <EditorItem
      editor={editor}
      item={step}
      label={label ?? ''}
      sub={sub}
      removeLabel="Take this step out"
      onStep={(by) => editor.placeStep(step.id, Math.max(0, at + by))}
      onDrop={(to) => editor.placeStep(step.id, to.at)}
    />
  )
}

function subOf(values: DraftItem['values'], { vessels, phases }: Options): string {
  const { kind, vessel, cup, from, phase, secondPerson } = values
  const labelOf = (of: typeof vessels, id: string | undefined) => of.find(({ value }) => value === id)?.label ?? ''
  const source = cup ?? from
  const into = labelOf(vessels, vessel) || 'no vessel'
  return [
    kindLabel(kind),
    source ? `${labelOf(vessels, source)} into ${into}` : into,
    labelOf(phases, phase),
    conditionText(values),
    secondPerson === 'yes' ? 'second person' : '',
  ]
    .filter((part) => part !== '')
    .join(' · ')
}

function MissingSteps({ editor }: { editor: EditorModel }) {
  const unweighed = useComputed(() => {
    const { steps, phases } = editor.draft.value
    const used = new Set(steps.map(({ values }) => values.line))
    return phases.flatMap(({ lines }) => lines).filter(({ id }) => !used.has(id)).length
  }).value
  if (unweighed === 0) return null
  return (
    <Button
      kind="caution"
      icon="scale"
      label={unweighed === 1 ? 'Add the missing weigh step' : `Add ${unweighed} missing weigh steps`}
      onPress={editor.addMissingSteps}
    />
  )
}

/** The figures of a step that decide how it is done, as they were typed. */
function conditionText(values: DraftItem['values']): string {
  const { targetC, holdMinutes, minutes, hours, bothAtLeastC, maxDifferenceC, portion } = values
  return [
    targetC ? `${targetC} °C` : '',
    holdMinutes ? `hold ${holdMinutes} min` : '',
    minutes ? `${minutes} min` : '',
    hours ? `${hours} h` : '',
    bothAtLeastC ? `both at least ${bothAtLeastC} °C` : '',
    maxDifferenceC ? `within ${maxDifferenceC} °C` : '',
    portion ? `${portion} %` : '',
  ]
    .filter((part) => part !== '')
    .join(', ')
}

const kindLabel = (kind: string | undefined): string =>
  stepKinds.find(({ value }) => value === kind)?.label.toLowerCase() ?? ''
