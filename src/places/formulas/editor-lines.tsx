import { useApp } from '../../app/app'
import { SpecFields } from '../../app/forms/spec-fields'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { SelectField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import type { DraftItem, DraftPhase } from './draft'
import { EditorItem } from './editor-item'
import type { EditorModel } from './editor-model'
import { phaseFields } from './fields'
import { shareOf } from './total'

/** The lines, phase by phase. */
export function EditorLines({ editor }: { editor: EditorModel }) {
  const { phases } = editor.draft.value
  return (
    <>
      <NoMaterials editor={editor} />
      {phases.map((phase) => (
        <PhaseCard key={phase.id} editor={editor} phase={phase} />
      ))}
      <div>
        <Button icon="plus" label="Add a phase" onPress={() => editor.add('phase')} />
      </div>
    </>
  )
}

function NoMaterials({ editor }: { editor: EditorModel }) {
  if (editor.options.value.materials.length > 0) return null
  return (
    <Notice title="Lines are made of materials, and there is none yet.">
      <Button icon="package" label="Add materials" href={addressOf({ place: 'materials' })} />
    </Notice>
  )
}

function PhaseCard({ editor, phase }: { editor: EditorModel; phase: DraftPhase }) {
  const { letter = '', name = '' } = phase.values
  const text = usePercentText()
  return (
    <Card label={`Phase ${letter}`}>
      <header class="editor-phase">
        <SpecFields
          specs={phaseFields}
          values={phase.values}
          errors={editor.fieldErrors.value[phase.id] ?? {}}
          onChange={(key, value) => editor.set(phase.id, key, value)}
        />
        <p class="editor-phase-share">{text(editor.total.value.byPhase.get(phase.id) ?? 0)} %</p>
      </header>
      <ol class="editor-items" aria-label={`Lines of ${name}`}>
        {phase.lines.map((line) => (
          <LineItem key={line.id} editor={editor} phase={phase} line={line} />
        ))}
      </ol>
      <div class="editor-buttons">
        <Button
          icon="plus"
          label="Add a line"
          name={`Add a line to ${name}`}
          onPress={() => editor.addLine(phase.id)}
        />
        {editor.draft.value.phases.length > 1 && (
          <>
            <Button label="Up" name={`Phase ${letter}: up`} onPress={() => editor.move(phase.id, -1)} />
            <Button label="Down" name={`Phase ${letter}: down`} onPress={() => editor.move(phase.id, 1)} />
          </>
        )}
        {phase.lines.length === 0 && (
          <Button icon="trash" label="Take this phase out" onPress={() => editor.remove(phase.id)} />
        )}
      </div>
    </Card>
  )
}

interface LineItemProps {
  editor: EditorModel
  phase: DraftPhase
  line: DraftItem
}

function LineItem({ editor, phase, line }: LineItemProps) {
  const text = usePercentText()
  const { options, total } = editor
  const name = options.value.materials.find(({ value }) => value === line.values.materialId)?.label
  const kind = line.values['amount.kind']
  const share = kind === 'qs' ? (total.value.qs ?? 0) : shareOf(line.values)
  const sub = kind === 'qs' ? 'q.s.' : kind === 'as-needed' ? 'as needed' : undefined
  return (
    <EditorItem
      editor={editor}
      item={line}
      label={name ?? 'Choose a material'}
      sub={sub}
      value={`${text(share)} %`}
      removeLabel="Take this line out"
    >
      {editor.draft.value.phases.length > 1 && (
        <SelectField
          label="Phase"
          value={phase.id}
          options={options.value.phases.filter(({ value }) => value !== 'finish')}
          onChange={(to) => editor.moveToPhase(line.id, to)}
        />
      )}
    </EditorItem>
  )
}

function usePercentText(): (share: number) => string {
  const mark = useApp().settings.decimalMark.value
  return (share) => (share * 100).toFixed(3).replace('.', mark)
}
