import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { NumberEntry } from '../../app/forms/number-entry'
import { type Refusal, sentenceOf } from '../../app/refusals'
import { recordSentences } from '../../app/refusals/forms-records'
import { numberSentences } from '../../app/refusals/numbers'
import { sayFrom } from '../../app/refusals/sentences'
import { unitOf } from '../../batch/how-read'
import type { BatchRecord } from '../../batch/record'
import { Button } from '../../parts/button'
import { Choice } from '../../parts/choice'
import { SelectField, TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'
import { asksUnit, type CheckField, type CheckForm, type CheckProblem, createCheckForm, isNumber } from './check-form'
import type { RecordModel } from './record-model'
import { WhenPart } from './when-part'

interface CheckSheetProps {
  record: BatchRecord
  model: RecordModel
  onClose: () => void
}

/** A check read after the run: the next day, from a kept jar, or earlier than it is entered. */
export function CheckSheet({ record, model, onClose }: CheckSheetProps) {
  const { clock } = useApp()
  const form = useMemo(
    () => createCheckForm(record, { nowMs: () => clock.nowMs(), offsetMinutes: () => clock.offsetMinutes() }),
    [record, clock],
  )
  const [refusal, setRefusal] = useState<Refusal | null>(null)
  const save = async () => {
    const intention = form.read()
    if (intention === null) return
    const refused = await model.write(intention)
    setRefusal(refused)
    if (refused === null) onClose()
  }
  const { draft, chosen, change } = form
  const checks = record.header.revision.specification
  return (
    <Sheet
      title="Add a check"
      onClose={onClose}
      foot={<Button kind="filled" size="primary" label="Record the check" onPress={() => void save()} full />}
    >
      <div class="check-form">
        <SelectField
          label="What was checked"
          value={draft.value.check}
          options={checks.map((check) => ({ value: check.id, label: check.label }))}
          onChange={(check) => change({ check })}
          hint={hintOf(form)}
          error={errorAt(form, 'check')}
        />
        {isNumber(chosen.value) ? <NumberPart form={form} /> : <SeenPart form={form} />}
        <TextField
          label="Which jar"
          hint="Empty for the batch itself; else how it was kept."
          placeholder="40 °C, week 4"
          value={draft.value.conditions}
          onChange={(conditions) => change({ conditions })}
        />
        <WhenPart
          draft={draft.value}
          change={change}
          wrong={{ moment: errorAt(form, 'moment'), reason: errorAt(form, 'reason') }}
        />
        {refusal && <Notice kind="over" title={sentenceOf(refusal)} live />}
      </div>
    </Sheet>
  )
}

function NumberPart({ form }: { form: CheckForm }) {
  const { draft, chosen, change } = form
  return (
    <div class="check-form-two">
      <NumberEntry
        label={chosen.value?.label ?? 'Value'}
        value={draft.value.value}
        onChange={(value) => change({ value })}
        unit={chosen.value && unitOf(chosen.value)}
        error={errorAt(form, 'value')}
      />
      {asksUnit(chosen.value) && (
        <TextField label="Unit" value={draft.value.unit} onChange={(unit) => change({ unit })} />
      )}
      <NumberEntry
        label="Sample at"
        value={draft.value.sampleC}
        onChange={(sampleC) => change({ sampleC })}
        unit="°C"
        error={errorAt(form, 'sampleC')}
      />
    </div>
  )
}

function SeenPart({ form }: { form: CheckForm }) {
  const { draft, chosen, change } = form
  const wrong = errorAt(form, 'good')
  return (
    <>
      <TextField
        label="What you found"
        value={draft.value.seen}
        onChange={(seen) => change({ seen })}
        placeholder={chosen.value?.expected}
        error={errorAt(form, 'seen')}
      />
      <Choice
        label="Is it as it should be?"
        value={draft.value.good === '' ? undefined : draft.value.good}
        options={[
          { value: 'yes', label: 'As it should be' },
          { value: 'no', label: 'Not as it should be' },
        ]}
        onChange={(good) => change({ good })}
      />
      {wrong && <Notice kind="over" title={wrong} live />}
    </>
  )
}

function hintOf({ chosen }: CheckForm): string | undefined {
  const check = chosen.value
  if (check === undefined) return undefined
  const { min, max } = check.limits ?? {}
  const limits = min === undefined || max === undefined ? check.expected : `good from ${min} to ${max}`
  return [check.method, limits].filter((part) => part !== undefined).join('; ') || undefined
}

function errorAt({ problem }: CheckForm, field: CheckField): string | undefined {
  return problem.value?.field === field ? sentenceOfProblem(problem.value) : undefined
}

const sentenceOfProblem = ({ refusal }: CheckProblem): string =>
  sayFrom<CheckProblem['refusal']>({ ...numberSentences, ...recordSentences }, refusal)
