import './record.css'
import './paper-table.css'
import './paper-curves.css'
import './record-phone.css'
import './records.css'
import './print.css'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { SaveNotice } from '../../app/import/save-notice'
import { stabilityAddress } from '../../app/jar-address'
import { latePart } from '../../app/late-part'
import { addressOf } from '../../app/routes'
import type { LabelDraft } from '../../batch/label-draft'
import type { BatchRecord } from '../../batch/record'
import { Button } from '../../parts/button'
import { Choice } from '../../parts/choice'
import { EmptyState } from '../../parts/empty'
import { AfterRest } from './after-rest'
import { CheckSheet } from './check-sheet'
import { NoteSheet } from './note-sheet'
import { usePaperLine } from './paper-line'
import { createRecordModel, type RecordModel } from './record-model'
import { RecordPaper } from './record-paper'

const SignSheet = latePart(() => import('./sign-sheet'), 'SignSheet')
const ShareSheet = latePart(() => import('./share-sheet'), 'ShareSheet')
const LabelSheet = latePart(() => import('../../app/label/label-sheet'), 'LabelSheet')

/** One record: what can be done with it, and under it the paper. */
export function RecordPage({ batch }: { batch: string }) {
  const app = useApp()
  const model = useMemo(() => createRecordModel(app, batch), [app, batch])
  useEffect(() => void model.open(), [model])
  const record = model.record.value
  const label = model.label.value
  usePaperLine(record?.header)
  const [labelled, setLabelled] = useState(false)
  if (model.state.value === 'missing') return <Missing />
  if (record === null) return <main class="record-page" aria-busy="true" />
  return (
    <main class="record-page">
      <Tools record={record} model={model} onLabel={() => setLabelled(true)} />
      <SaveNotice saver={model.saver} />
      <Reading record={record} label={label} />
      {labelled && label && (
        <LabelSheet
          draft={label}
          how={record.stage === 'closed' || record.stage === 'abandoned' ? 'as it was made' : 'as it stands so far'}
          of={`${record.header.formulaName}, ${record.header.code}, ${record.header.contact}`}
          onClose={() => setLabelled(false)}
        />
      )}
    </main>
  )
}

interface ReadingProps {
  record: BatchRecord
  label: LabelDraft | null
}

/** The paper, whole or for a reviewer; what the reviewer is led to is looked for once it stands. */
function Reading({ record, label }: ReadingProps) {
  const [view, setView] = useState<'whole' | 'review'>('whole')
  const [target, setTarget] = useState<{ readonly at: string }>()
  useEffect(() => {
    if (target !== undefined) lead(target.at)
  }, [target])
  return (
    <>
      <Choice
        label="What of the record is shown"
        hideLabel
        value={view}
        options={[
          { value: 'whole', label: 'Whole record' },
          { value: 'review', label: 'Out of the ordinary' },
        ]}
        onChange={setView}
      />
      <RecordPaper
        record={record}
        label={label}
        reviewed={view === 'review'}
        target={target?.at}
        onLead={(at) => {
          setView('whole')
          setTarget({ at })
        }}
      />
    </>
  )
}

/** Entries that stand nowhere else are in the trail, whose page turns meanwhile. */
function lead(at: string): void {
  requestAnimationFrame(() => {
    const place = document.getElementById(at) ?? document.getElementById(at.replace('entry-', 'trail-'))
    if (place === null) return
    place.tabIndex = -1
    place.scrollIntoView({ block: 'center' })
    place.focus({ preventScroll: true })
  })
}

function Missing() {
  return (
    <main class="record-page">
      <EmptyState
        title="This batch is not here"
        text="It may be in a file that has not been brought in on this tablet."
        actions={<Button kind="filled" label="To the records" href={addressOf({ place: 'records' })} />}
      />
    </main>
  )
}

interface ToolsProps {
  record: BatchRecord
  model: RecordModel
  onLabel: () => void
}

function Tools({ record, model, onLabel }: ToolsProps) {
  const [sheet, setSheet] = useState<'check' | 'note' | 'sign' | 'share' | null>(null)
  const { id } = record.header
  const open = record.stage === 'in-hand' || record.stage === 'parked'
  const readOnly = record.unknownKinds.length > 0
  return (
    <div class="record-tools">
      <Button kind="plain" icon="arrow-left" label="Records" href={addressOf({ place: 'records' })} />
      {open && <Button kind="filled" icon="play" label="Go on with it" href={addressOf({ place: 'run', batch: id })} />}
      <AfterRest record={record} model={model} />
      {!readOnly && <Button icon="test-tube" label="Add a check" onPress={() => setSheet('check')} />}
      {!readOnly && <Button icon="pencil" label="Add a note" onPress={() => setSheet('note')} />}
      {!readOnly && <Button icon="check" label="Sign" onPress={() => setSheet('sign')} />}
      <Button
        icon="split"
        label="New revision from this batch"
        href={addressOf({ place: 'formulas', formula: record.header.formulaId, batch: id })}
      />
      <Button icon="calendar-clock" label="Stability" href={stabilityAddress(id)} />
      <Button icon="printer" label="Print" onPress={() => window.print()} />
      <Button icon="file-text" label="Label draft" onPress={onLabel} />
      <Button icon="download" label="Save or share" onPress={() => setSheet('share')} />
      {sheet === 'check' && <CheckSheet record={record} model={model} onClose={() => setSheet(null)} />}
      {sheet === 'sign' && <SignSheet record={record} model={model} onClose={() => setSheet(null)} />}
      {sheet === 'share' && <ShareSheet record={record} model={model} onClose={() => setSheet(null)} />}
      {sheet === 'note' && <NoteSheet model={model} deviations={record.deviations} onClose={() => setSheet(null)} />}
    </div>
  )
}
