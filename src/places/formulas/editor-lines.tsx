import { useComputed } from '@preact/signals'
import { useState } from 'preact/hooks'
import { useFormat } from '../../app/format'
import { SpecFields } from '../../app/forms/spec-fields'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Choice } from '../../parts/choice'
import { SelectField } from '../../parts/form'
import { type DraftItem, type DraftPhase, finish } from './draft'
import { noSentences } from './editor-errors'
import { EditorItem } from './editor-item'
import type { EditorModel } from './editor-model'
import { phaseFields } from './fields'
import { rowKeyOf } from './line-fields'
import { MaterialSheet } from './material-sheet'
import { QsPortions } from './qs-portions'
import { OtherUnit, ShareEntry } from './share-entry'

/** The lines, phase by phase. A line is dragged, or moved with keys, within its phase and into others. */
export function EditorLines({ editor }: { editor: EditorModel }) {
  const phases = useComputed(() => editor.draft.value.phases).value
  const hasSize = editor.world.value.sizeUg !== null
  return (
    <div class="editor-part" id="editor-lines" data-drop-family="lines">
      <Choice
        label="Shares in"
        value={editor.unit.value}
        options={[
          { value: '%', label: '% of the batch' },
          { value: 'g', label: 'g of the usual batch', sub: hasSize ? undefined : 'say its size first' },
        ]}
        onChange={(unit) => (unit === '%' || hasSize) && editor.setUnit(unit)}
        hideLabel
      />
      {phases.map((phase) => (
        <PhaseCard key={phase.id} editor={editor} phase={phase} several={phases.length > 1} />
      ))}
      <div>
        <Button icon="plus" label="Add a phase" onPress={() => editor.add('phase')} />
      </div>
    </div>
  )
}

function PhaseCard({ editor, phase, several }: { editor: EditorModel; phase: DraftPhase; several: boolean }) {
  const { letter = '', name = '' } = phase.values
  const errors = useComputed(() => editor.fieldErrors.value[phase.id] ?? noSentences).value
  const [adding, setAdding] = useState(false)
  return (
    <Card label={`Phase ${letter}`}>
      <header class="editor-phase">
        <SpecFields
          specs={phaseFields}
          values={phase.values}
          errors={errors}
          onChange={(key, value) => editor.set(phase.id, key, value)}
        />
        <PhaseShare editor={editor} id={phase.id} />
      </header>
      <ol class="editor-items" aria-label={`Lines of ${name}`} data-drop-list={phase.id}>
        {phase.lines.map((line) => (
          <LineItem key={line.id} editor={editor} phase={phase.id} line={line} />
        ))}
      </ol>
      <div class="editor-buttons">
        <Button icon="plus" label="Add a line" name={`Add a line to ${name}`} onPress={() => setAdding(true)} />
        {several && (
          <>
            <Button icon="arrow-up" label="Up" name={`Up: phase ${letter}`} onPress={() => editor.move(phase.id, -1)} />
            <Button
              icon="arrow-down"
              label="Down"
              name={`Down: phase ${letter}`}
              onPress={() => editor.move(phase.id, 1)}
            />
          </>
        )}
        {phase.lines.length === 0 && (
          <Button icon="trash" label="Take this phase out" onPress={() => editor.remove(phase.id)} />
        )}
      </div>
      {adding && (
        <MaterialSheet
          options={editor.options.value.materials}
          onPick={(material) => {
            setAdding(false)
            const id = editor.addLine(phase.id, material)
            // Once the row stands, and the sheet has given the focus back.
            requestAnimationFrame(() => document.getElementById(`share-${id}`)?.focus())
          }}
          onClose={() => setAdding(false)}
        />
      )}
    </Card>
  )
}

function PhaseShare({ editor, id }: { editor: EditorModel; id: string }) {
  const format = useFormat()
  return <p class="editor-phase-share">{format.percent(editor.total.value.byPhase.get(id) ?? 0, 3)}</p>
}

interface LineItemProps {
  editor: EditorModel
  phase: string
  line: DraftItem
}

function LineItem({ editor, phase, line }: LineItemProps) {
  const { materialId } = line.values
  const name = useComputed(() => editor.names.value.materials.get(materialId ?? '')).value
  const kind = line.values['amount.kind']
  const rowKey = rowKeyOf(kind)
  return (
    <EditorItem
      editor={editor}
      item={line}
      label={name ?? 'Choose a material'}
      sub={<LineSub editor={editor} line={line} />}
      entry={<ShareEntry editor={editor} line={line} name={name ?? 'no material yet'} />}
      without={rowKey === null ? [] : [rowKey]}
      removeLabel="Take this line out"
      onStep={(by) => editor.stepLine(line.id, by)}
      onDrop={({ list, at }) => editor.placeLine(line.id, list, at)}
    >
      <LineMore editor={editor} phase={phase} line={line} />
    </EditorItem>
  )
}

/** What only an open line shows. */
function LineMore({ editor, phase, line }: LineItemProps) {
  const phases = editor.options.value.phases.filter(({ value }) => value !== finish)
  const isQs = line.values['amount.kind'] === 'qs'
  return (
    <>
      {isQs && <QsPortions editor={editor} line={line} />}
      <div class="editor-buttons">
        {phases.length > 1 && (
          <SelectField
            label="Phase"
            value={phase}
            options={phases}
            onChange={(to) => editor.placeLine(line.id, to, Number.MAX_SAFE_INTEGER)}
          />
        )}
        {!isQs && <Button icon="split" label="Split in two lines" onPress={() => editor.split(line.id)} />}
      </div>
    </>
  )
}

function LineSub({ editor, line }: { editor: EditorModel; line: DraftItem }) {
  const { values } = line
  const kind = { qs: 'q.s., ', 'as-needed': 'as needed, ' }[values['amount.kind'] ?? ''] ?? ''
  const range = rangeText(values)
  return (
    <>
      {kind}
      <OtherUnit editor={editor} line={line} />
      {range && ` · ${range}`}
      {values.fixedOrder === 'yes' && ' · after those above'}
    </>
  )
}

function rangeText(values: DraftItem['values']): string {
  const needed = values['amount.kind'] === 'as-needed'
  const min = (needed ? values['amount.min'] : values['range.min']) ?? ''
  const max = (needed ? values['amount.max'] : values['range.max']) ?? ''
  if (min === '' && max === '') return ''
  if (min === '') return `${max} % at most`
  return max === '' ? `${min} % at least` : `${min}–${max} %`
}
