import './jar-entry.css'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { sentenceOf } from '../../app/refusals'
import { numberSentences } from '../../app/refusals/numbers'
import { sayFrom } from '../../app/refusals/sentences'
import { stabilityTemplates } from '../../batch/stability-templates'
import type { BatchState } from '../../batch/state'
import { Button } from '../../parts/button'
import { Choice, Switch } from '../../parts/choice'
import { TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { NumberField } from '../../parts/number-field'
import { Sheet } from '../../parts/sheet'
import type { NumberRefusal } from '../../trade/number-text'
import { ConditionRows } from './condition-rows'
import { createOwnTemplates } from './own-templates'
import type { StabilityModel } from './stability-model'
import { createPlanForm, type PlanForm, type PlanProblem } from './stability-plan-form'
import { TemplatePart } from './template-part'

interface PlanSheetProps {
  model: StabilityModel
  state: BatchState
  onClose: () => void
}

/** A plan for kept jars, from a template and changed as needed. */
export function PlanSheet({ model, state, onClose }: PlanSheetProps) {
  const app = useApp()
  const templates = useMemo(() => createOwnTemplates(app), [app])
  useEffect(() => void templates.load(), [templates])
  const form = useMemo(() => createPlanForm(state, app.clock.offsetMinutes(), () => templates.all.value), [templates])
  const [wrong, setWrong] = useState<string | null>(null)
  const { draft, change, take } = form
  const keep = async () => {
    const plan = form.read()
    if (plan === null) return
    const refusal = await model.write({ do: 'plan-stability', plan })
    setWrong(refusal === null ? null : sentenceOf(refusal))
    if (refusal === null) onClose()
  }
  const problem = form.problem.value
  return (
    <Sheet
      wide
      title="Stability plan"
      onClose={onClose}
      foot={<Button kind="filled" size="primary" label="Keep this plan" onPress={() => void keep()} full />}
    >
      <div class="check-form">
        <Choice
          label="Begin with"
          value={draft.value.template || undefined}
          options={[...stabilityTemplates, ...templates.all.value].map(({ id, name }) => ({ value: id, label: name }))}
          onChange={take}
        />
        <div class="check-form-two">
          <TextField label="Name of the plan" value={draft.value.name} onChange={(name) => change({ name })} />
          <TextField
            label="Jars set aside on"
            type="date"
            value={draft.value.on}
            onChange={(on) => change({ on })}
            error={problem?.what === 'day' ? 'Choose the day from which the weeks count.' : undefined}
          />
        </div>
        <ConditionRows form={form} />
        <Days form={form} />
        <Measures form={form} state={state} />
        <TemplatePart form={form} templates={templates} />
        {problem?.refusal && <Notice kind="over" title={problemWords(problem)} live />}
        {wrong && <Notice kind="over" title={wrong} live />}
      </div>
    </Sheet>
  )
}

const problemWords = ({ what, refusal }: PlanProblem): string =>
  refusal === null ? what : `${what}: ${sayFrom<NumberRefusal>(numberSentences, refusal)}`

function Days({ form: { draft, change } }: { form: PlanForm }) {
  const { pulls } = draft.value
  if (draft.value.conditions.every(({ cycles }) => cycles)) return null
  const set = (index: number, part: Partial<(typeof pulls)[number]>) =>
    change({ pulls: pulls.map((pull, at) => (at === index ? { ...pull, ...part } : pull)) })
  return (
    <fieldset class="plan-part">
      <legend>Days on which a jar of each is pulled</legend>
      <ul class="plan-days">
        {pulls.map((pull, index) => (
          <li key={index}>
            <NumberField label={`Day, pull ${index + 1}`} value={pull.day} onChange={(day) => set(index, { day })} />
            <NumberField
              label="Days either side"
              value={pull.windowDays}
              onChange={(windowDays) => set(index, { windowDays })}
            />
            <Button
              icon="trash"
              label="Leave out"
              name={`Leave out day ${pull.day}`}
              onPress={() => change({ pulls: pulls.filter((_, at) => at !== index) })}
            />
          </li>
        ))}
      </ul>
      <Button
        icon="plus"
        label="One more day"
        onPress={() => change({ pulls: [...pulls, { day: '', windowDays: '2' }] })}
      />
    </fieldset>
  )
}

function Measures({ form: { draft, change }, state }: { form: PlanForm; state: BatchState }) {
  const { checks, free } = draft.value
  const set = (index: number, part: Partial<(typeof free)[number]>) =>
    change({ free: free.map((each, at) => (at === index ? { ...each, ...part } : each)) })
  return (
    <fieldset class="plan-part">
      <legend>What is read of each jar</legend>
      {state.header.revision.specification.map(({ id, label, method }) => (
        <Switch
          key={id}
          label={label}
          hint={method}
          checked={checks.includes(id)}
          onChange={(on) => change({ checks: on ? [...checks, id] : checks.filter((each) => each !== id) })}
        />
      ))}
      {free.map((each, index) => (
        <div class="check-form-two" key={index}>
          <TextField label="Something else" value={each.label} onChange={(label) => set(index, { label })} />
          <TextField
            label="Its unit"
            hint="Empty for what is told in words."
            value={each.unit}
            onChange={(unit) => set(index, { unit })}
          />
        </div>
      ))}
      <Button icon="plus" label="Something else" onPress={() => change({ free: [...free, { label: '', unit: '' }] })} />
    </fieldset>
  )
}
