import './rested.css'
import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { type Refusal, sentenceOf } from '../../app/refusals'
import { SignFields, useSign } from '../../app/sign/sign-fields'
import { asksWhy } from '../../batch/asks-why'
import type { Disposition } from '../../batch/kinds'
import type { BatchRecord } from '../../batch/record'
import { isOutside, latestRested } from '../../batch/record-results'
import type { BatchState } from '../../batch/state'
import { Button } from '../../parts/button'
import { Choice, type ChoiceOption } from '../../parts/choice'
import { TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'
import { limitsWords } from './limits-words'
import type { RecordModel } from './record-model'
import { shownValue } from './shown-value'

const decisions: readonly ChoiceOption<Disposition>[] = [
  { value: 'accept', label: 'Accept', sub: 'Fit for what it was made for' },
  { value: 'hold', label: 'Hold', sub: 'Until later checks say more' },
  { value: 'rework', label: 'Rework', sub: 'It is opened again, with steps of its own' },
  { value: 'reject', label: 'Reject', sub: 'It goes to waste' },
]

interface DispositionSheetProps {
  record: BatchRecord
  state: BatchState
  model: RecordModel
  onClose: () => void
  /** A rework is planned on a sheet of its own. */
  onRework: () => void
}

/** What becomes of a batch after its rest: decided by somebody, on what its checks say, and signed. */
export function DispositionSheet({ record, state, model, onClose, onRework }: DispositionSheetProps) {
  const app = useApp()
  const [decision, setDecision] = useState<Disposition | undefined>(undefined)
  const [note, setNote] = useState('')
  const [refusal, setRefusal] = useState<Refusal | null>(null)
  const sign = useSign({ meaning: 'reviewed and decided', person: app.settings.value.peek().person })
  const choices = decisions.filter(({ value }) => value !== state.decision?.decision || value === 'rework')
  const asks = decision !== undefined && (decision === 'reject' || asksWhy(state, decision))
  const missing = missingIn(decision, asks && note.trim() === '', sign.missing.value)
  const save = async () => {
    if (decision === undefined) return
    if (decision === 'rework') {
      onRework()
      return
    }
    const { lastHash } = state
    const signature = await sign.give()
    if (signature === null) return
    const more = note.trim() === '' ? {} : { note: note.trim() }
    const refused = await model.write({
      do: 'close',
      decision,
      ...more,
      signatures: { by: [signature], seen: lastHash },
    })
    setRefusal(refused)
    if (refused === null) onClose()
  }
  return (
    <Sheet
      title="What becomes of it"
      onClose={onClose}
      foot={
        <Button
          kind={missing === undefined ? 'filled' : 'closed'}
          size="primary"
          label={decision === 'rework' ? 'Plan the rework' : 'Sign and record'}
          sub={missing}
          onPress={() => void save()}
          full
        />
      }
    >
      <div class="rested">
        <Grounds record={record} />
        <Choice label="Decision" value={decision} options={choices} stacked onChange={setDecision} />
        {decision !== undefined && decision !== 'rework' && (
          <>
            <TextField label={asks ? 'Why' : 'A word about it, if you like'} rows={2} value={note} onChange={setNote} />
            <SignFields sign={sign} label="Decided by" />
          </>
        )}
        {refusal && <Notice kind="over" title={sentenceOf(refusal)} live />}
      </div>
    </Sheet>
  )
}

function missingIn(decision: Disposition | undefined, silent: boolean, unsigned: string | null): string | undefined {
  if (decision === undefined) return 'choose one'
  if (decision === 'rework') return undefined
  if (silent) return 'say why'
  return unsigned ?? undefined
}

/** What a decision rests on: what is out of limits, what was not read yet, or that all is well. */
function Grounds({ record }: { record: BatchRecord }) {
  const format = useFormat()
  const outside = latestRested(record.results).filter(isOutside)
  const waiting = record.results.missing.filter(({ when }) => when === 'after-rest')
  if (outside.length === 0 && waiting.length === 0)
    return <Notice kind="good" title="Every check after the rest is within its limits." />
  return (
    <>
      {outside.map((row) => (
        <Notice
          key={row.entry}
          kind="over"
          title={`${row.label}: ${shownValue(row, format)}, wanted ${limitsWords(row.check, format) || 'otherwise'}`}
        />
      ))}
      {waiting.length > 0 && (
        <Notice kind="caution" title={`Not read yet: ${waiting.map(({ label }) => label).join(', ')}`} />
      )}
    </>
  )
}
