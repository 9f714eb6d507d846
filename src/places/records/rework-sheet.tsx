import './rested.css'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { NumberEntry } from '../../app/forms/number-entry'
import { type Refusal, sentenceOf } from '../../app/refusals'
import { recordSentences } from '../../app/refusals/forms-records'
import { numberSentences } from '../../app/refusals/numbers'
import { sayFrom } from '../../app/refusals/sentences'
import type { BatchState } from '../../batch/state'
import { Button } from '../../parts/button'
import { Switch } from '../../parts/choice'
import { SelectField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { ReasonChips } from '../../parts/reason-chips'
import { Sheet } from '../../parts/sheet'
import type { RecordModel } from './record-model'
import { reworkKinds } from './rework-draft'
import { createReworkForm, type ReworkForm } from './rework-form'
import type { ReworkProblem } from './rework-read'
import { ReworkStepPart, reworkNames } from './rework-step'

interface ReworkSheetProps {
  state: BatchState
  model: RecordModel
  onClose: () => void
  /** The batch is open again. */
  onDone: () => void
}

/** A rework is chosen step by step: what goes back, what is added and done. It is then worked through like any batch. */
export function ReworkSheet({ state, model, onClose, onDone }: ReworkSheetProps) {
  const { catalogue, drafts, clock } = useApp()
  const form = useMemo(() => {
    const [materials, lots] = [catalogue.materials.peek(), catalogue.lots.peek()]
    return createReworkForm(state, { drafts, clock, materials, lots })
  }, [])
  useEffect(() => void form.restore(), [form])
  const [refusal, setRefusal] = useState<Refusal | null>(null)
  const items = form.items.value
  const save = async () => {
    const intention = form.read()
    if (intention === null) return
    const refused = await model.write(intention)
    setRefusal(refused)
    if (refused !== null) return
    form.forget()
    onDone()
  }
  const wrong = wrongOf(form, '')
  return (
    <Sheet
      wide
      title={`Rework ${state.parts.length + 1}`}
      onClose={onClose}
      foot={
        <Button
          kind="filled"
          size="primary"
          label="Open it again"
          sub={`${countWords(items.length)}${form.breaks.value.length > 0 ? ', outside limits' : ''}`}
          onPress={() => void save()}
          full
        />
      }
    >
      <div class="rested">
        <ReasonChips
          label="Why it is reworked"
          options={['too thin', 'too thick', 'pH out of limits', 'not even']}
          other="In your own words"
          value={form.whole.value.reason ?? ''}
          onChange={(text) => form.setWhole('reason', text)}
        />
        {wrong('reason') && <Notice kind="over" title={wrong('reason') ?? ''} live />}
        <Back form={form} wrong={wrong} />
        <ol class="rework-steps">
          {items.map((item, index) => (
            <ReworkStepPart key={item.key} item={item} at={index + 1} form={form} wrong={wrongOf(form, item.key)} />
          ))}
        </ol>
        <fieldset class="rework-add">
          <legend>Add a step</legend>
          {reworkKinds
            .filter((kind) => kind !== 'adjust' || form.choices.adjustments.length > 0)
            .map((kind) => (
              <Button key={kind} icon="plus" label={reworkNames[kind]} onPress={() => form.add(kind)} />
            ))}
        </fieldset>
        {wrong('steps') && <Notice kind="over" title={wrong('steps') ?? ''} live />}
        <Limits form={form} />
        {form.isBegun.value && (
          <Button
            kind="plain"
            icon="trash"
            label="Discard this plan"
            onPress={() => {
              form.forget()
              onClose()
            }}
          />
        )}
        {refusal && <Notice kind="over" title={sentenceOf(refusal)} live />}
      </div>
    </Sheet>
  )
}

/** What the product would be outside of with all that is added: told before anything is opened. */
function Limits({ form }: { form: ReworkForm }) {
  const format = useFormat()
  const rows = form.breaks.value
  if (rows.length === 0) return null
  return (
    <Notice kind="caution" title="Weighed as planned, it ends outside these limits." live>
      <ul class="rework-limits">
        {rows.map(({ line, name, after, low, high }) => {
          const limit = after > high ? `at most ${format.percent(high)}` : `at least ${format.percent(low)}`
          return (
            <li key={line}>
              {name} {format.percent(after)}, {limit}
            </li>
          )
        })}
      </ul>
    </Notice>
  )
}

/** The vessel it is done in, and what is emptied back into it. */
function Back({ form, wrong }: { form: ReworkForm; wrong: (field: string) => string | undefined }) {
  const { choices, whole, setWhole } = form
  const back = whole.value.back === 'yes'
  return (
    <div class="rework-fields">
      <SelectField
        label="In which vessel"
        value={whole.value.vessel ?? ''}
        options={choices.vessels}
        onChange={(vessel) => setWhole('vessel', vessel)}
      />
      {choices.filledUg > 0 && back && (
        <NumberEntry
          label="Emptied back"
          unit="g"
          value={whole.value.mass ?? ''}
          error={wrong('mass')}
          onChange={(mass) => setWhole('mass', mass)}
        />
      )}
      {choices.filledUg > 0 && (
        <div class="rested-wide">
          <Switch
            label="Empty the units back into it"
            hint="What stays in them is not reworked."
            checked={back}
            onChange={(on) => setWhole('back', on ? 'yes' : 'no')}
          />
        </div>
      )}
    </div>
  )
}

const countWords = (count: number): string =>
  count === 0 ? 'choose at least one step' : count === 1 ? 'with one step' : `with ${count} steps`

const wrongOf =
  ({ problem }: ReworkForm, item: string) =>
  (field: string): string | undefined => {
    const wrong = problem.value
    return wrong?.item === item && wrong.field === field ? sentence(wrong) : undefined
  }

const sentence = ({ refusal }: ReworkProblem): string =>
  sayFrom<ReworkProblem['refusal']>({ ...numberSentences, ...recordSentences }, refusal)
