import { NumberEntry } from '../../app/forms/number-entry'
import { Button } from '../../parts/button'
import { Switch } from '../../parts/choice'
import { TextField } from '../../parts/form'
import type { ConditionDraft, PlanForm } from './stability-plan-form'

/** How the jars are kept: places, and cycles of frost and thaw. */
export function ConditionRows({ form: { draft, change } }: { form: PlanForm }) {
  const { conditions } = draft.value
  const set = (index: number, part: Partial<ConditionDraft>) =>
    change({ conditions: conditions.map((each, at) => (at === index ? { ...each, ...part } : each)) })
  const add = (more: ConditionDraft) => change({ conditions: [...conditions, more] })
  return (
    <fieldset class="plan-part">
      <legend>How the jars are kept</legend>
      <ul class="plan-conditions">
        {conditions.map((condition, index) => (
          <li key={index}>
            <TextField
              label={`Condition ${index + 1}`}
              value={condition.label}
              placeholder="30 °C, in the dark"
              onChange={(label) => set(index, { label })}
            />
            {condition.cycles ? (
              <Cycles condition={condition} onChange={(cycles) => set(index, { cycles })} />
            ) : (
              <Switch
                label="Warmer than a shelf"
                hint="what it shows is an indication only"
                checked={condition.accelerated}
                onChange={(accelerated) => set(index, { accelerated })}
              />
            )}
            <Button
              icon="trash"
              label="Leave out"
              name={`Leave out condition ${condition.label}`}
              onPress={() => change({ conditions: conditions.filter((_, at) => at !== index) })}
            />
          </li>
        ))}
      </ul>
      <div class="plan-more">
        <Button icon="plus" label="One more place" onPress={() => add({ label: '', accelerated: false })} />
        <Button
          icon="plus"
          label="Freeze and thaw"
          onPress={() => add({ label: 'Freeze–thaw', accelerated: true, cycles: { hours: '48', pulls: '1, 3, 5' } })}
        />
      </div>
    </fieldset>
  )
}

interface CyclesProps {
  condition: ConditionDraft
  onChange: (cycles: NonNullable<ConditionDraft['cycles']>) => void
}

function Cycles({ condition: { cycles }, onChange }: CyclesProps) {
  if (cycles === undefined) return null
  return (
    <div class="check-form-two">
      <TextField
        label="Pulled after cycles"
        value={cycles.pulls}
        onChange={(pulls) => onChange({ ...cycles, pulls })}
      />
      <NumberEntry
        label="One cycle"
        unit="h"
        value={cycles.hours}
        onChange={(hours) => onChange({ ...cycles, hours })}
      />
    </div>
  )
}
