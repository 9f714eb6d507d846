import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { latePart } from '../../app/late-part'
import { sideBySide } from '../../app/side-by-side'
import type { BatchRecord } from '../../batch/record'
import { Button } from '../../parts/button'
import type { RecordModel } from './record-model'

const RestedSheet = latePart(() => import('./rested-sheet'), 'RestedSheet')
const DispositionSheet = latePart(() => import('./disposition-sheet'), 'DispositionSheet')
const ReworkSheet = latePart(() => import('./rework-sheet'), 'ReworkSheet')

interface AfterRestProps {
  record: BatchRecord
  model: RecordModel
}

/** What comes after the rest of a batch: its checks in one pass, what becomes of it, and how others came out. */
export function AfterRest({ record, model }: AfterRestProps) {
  const { go } = useApp()
  const [sheet, setSheet] = useState<'checks' | 'decide' | 'rework' | null>(null)
  const { id, formulaId } = record.header
  const state = model.batch.value
  const close = () => setSheet(null)
  const due = record.results.missing.filter((check) => check.when === 'after-rest').length
  const isOver = record.stage === 'closed' || record.stage === 'abandoned'
  const takes = record.unknownKinds.length === 0
  const decided = record.closed?.decision === 'accept' || record.closed?.decision === 'reject'
  return (
    <>
      {takes && isOver && due > 0 && record.closed?.decision !== 'reject' && (
        <Button
          kind="filled"
          icon="clipboard-check"
          label={due === 1 ? 'Enter the check that is due' : `Enter the ${due} checks that are due`}
          onPress={() => setSheet('checks')}
        />
      )}
      {takes && record.stage === 'closed' && (
        <Button
          kind={due === 0 && !decided ? 'filled' : 'quiet'}
          icon="flag"
          label="Decide"
          onPress={() => setSheet('decide')}
        />
      )}
      <Button icon="compare" label="Compare with other batches" href={sideBySide(formulaId, id)} />
      {sheet === 'checks' && <RestedSheet record={record} model={model} onClose={close} />}
      {sheet === 'decide' && state && (
        <DispositionSheet
          record={record}
          state={state}
          model={model}
          onClose={close}
          onRework={() => setSheet('rework')}
        />
      )}
      {sheet === 'rework' && state && (
        <ReworkSheet state={state} model={model} onClose={close} onDone={() => go({ place: 'run', batch: id })} />
      )}
    </>
  )
}
