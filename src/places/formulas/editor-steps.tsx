import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { SelectField } from '../../parts/form'
import { EditorItem } from './editor-item'
import type { EditorModel } from './editor-model'
import { stepKinds } from './step-fields'

/** The procedure: every step in its order, and a new one of any kind. */
export function EditorSteps({ editor }: { editor: EditorModel }) {
  const { steps, phases } = editor.draft.value
  const options = editor.options.value
  const lines = phases.flatMap((phase) => phase.lines)
  const unweighed = lines.filter((line) => !steps.some(({ values }) => values.line === line.id)).length
  const vesselName = (id: string | undefined) => options.vessels.find(({ value }) => value === id)?.label ?? 'no vessel'
  const phaseName = (id: string | undefined) => options.phases.find(({ value }) => value === id)?.label ?? ''
  return (
    <Card labelledBy="editor-steps">
      <h2 id="editor-steps">Procedure</h2>
      <ol class="editor-items" aria-label="Steps">
        {steps.map((step, index) => (
          <EditorItem
            key={step.id}
            editor={editor}
            item={step}
            label={options.steps[index]?.label ?? ''}
            sub={`${kindLabel(step.values.kind)} · ${vesselName(step.values.vessel)} · ${phaseName(step.values.phase)}`}
            removeLabel="Take this step out"
          />
        ))}
      </ol>
      {unweighed > 0 && (
        <Button
          kind="caution"
          icon="scale"
          label={unweighed === 1 ? 'Add the missing weigh step' : `Add ${unweighed} missing weigh steps`}
          onPress={editor.addMissingSteps}
        />
      )}
      <SelectField
        label="Add a step"
        value=""
        options={[{ value: '', label: 'choose what it does' }, ...stepKinds]}
        onChange={(kind) => kind !== '' && editor.addStep(kind)}
      />
    </Card>
  )
}

const kindLabel = (kind: string | undefined): string =>
  stepKinds.find(({ value }) => value === kind)?.label.toLowerCase() ?? ''
