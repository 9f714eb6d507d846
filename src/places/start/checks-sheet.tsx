import './sheets.css'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { NumberEntry } from '../../app/forms/number-entry'
import type { Balance } from '../../batch/catalogue'
import { Button } from '../../parts/button'
import { Choice, Switch } from '../../parts/choice'
import { TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'
import { allowedUg, ambientRefusal, balanceCheckOf, type CheckReading, meterCheckOf } from './instruments'
import type { StartModel } from './model'
import { balancesInUse, needsMeter } from './ready'
import { sayRefusal } from './say'
import type { StartProps } from './shared'

interface ChecksSheetProps extends StartProps {
  onClose: () => void
}

/** What is looked at before the first weighing. What is left out is recorded as not done; nothing here holds the batch up. */
export const ChecksSheet = ({ model, house, setUp, onClose }: ChecksSheetProps) => {
  const { list, ambient } = model.choice.value
  const wrongAmbient = ambientRefusal(model.choice.value)
  const tick = (text: string, on: boolean) =>
    model.change({ list: on ? [...list, text] : list.filter((each) => each !== text) })
  return (
    <Sheet title="Checks before the batch" wide onClose={onClose} closeLabel="Done">
      {setUp.revision.preflight.length > 0 && (
        <fieldset class="start-group">
          <legend>The formula's list</legend>
          {setUp.revision.preflight.map((text) => (
            <Switch key={text} label={text} checked={list.includes(text)} onChange={(on) => tick(text, on)} />
          ))}
        </fieldset>
      )}
      {balancesInUse(setUp, house).map((balance) => (
        <BalanceCheck key={balance.id} balance={balance} model={model} />
      ))}
      {needsMeter(setUp) && <MeterCheck model={model} />}
      <BellCheck model={model} />
      <NumberEntry
        label="Room temperature, if you note it"
        unit="°C"
        value={ambient}
        error={wrongAmbient ? sayRefusal(wrongAmbient) : undefined}
        onChange={(text) => model.change({ ambient: text })}
      />
    </Sheet>
  )
}

const BalanceCheck = ({ balance, model }: { balance: Balance; model: StartModel }) => {
  const format = useFormat()
  const { balanceChecks } = model.choice.value
  const typed = balanceChecks[balance.id] ?? { reference: '', read: '' }
  const reading = balanceCheckOf(balance, model.choice.value)
  const change = (part: Partial<typeof typed>) =>
    model.change({ balanceChecks: { ...balanceChecks, [balance.id]: { ...typed, ...part } } })
  const within = `within ${format.massWithUnit(allowedUg(balance), balance.stepUg)}`
  return (
    <fieldset class="start-group">
      <legend>
        {balance.name} <span class="start-quiet">with a reference mass, {within}</span>
      </legend>
      <div class="start-fields">
        <NumberEntry
          label="Reference mass"
          unit="g"
          value={typed.reference}
          error={errorOf(reading, 'reference', typed.reference)}
          onChange={(reference) => change({ reference })}
        />
        <NumberEntry
          label="It shows"
          unit="g"
          value={typed.read}
          error={errorOf(reading, 'read', typed.read)}
          onChange={(read) => change({ read })}
        />
      </div>
      <Verdict
        reading={reading}
        good={`Good, ${within}.`}
        bad={`Off by more than ${within.replace('within ', '')}: level it, adjust it, try again. It is recorded as found.`}
      />
    </fieldset>
  )
}

const MeterCheck = ({ model }: { model: StartModel }) => {
  const { slope, buffers } = model.choice.value
  const reading = meterCheckOf(model.choice.value)
  return (
    <fieldset class="start-group">
      <legend>pH meter</legend>
      <div class="start-fields">
        <NumberEntry
          label="Slope"
          unit="%"
          value={slope}
          error={errorOf(reading, 'slope', slope)}
          onChange={(text) => model.change({ slope: text })}
        />
        <TextField
          label="Buffers"
          hint="with blanks between: 4.01 7.00"
          value={buffers}
          error={errorOf(reading, 'buffers', buffers)}
          onChange={(text) => model.change({ buffers: text })}
        />
      </div>
      <Verdict
        reading={reading}
        good="Good: the slope is between 95 and 105 %."
        bad="The slope is outside 95 to 105 %: clean or replace the electrode. Readings of this batch are doubtful."
      />
    </fieldset>
  )
}

const BellCheck = ({ model }: { model: StartModel }) => {
  const { alarm } = useApp()
  return (
    <fieldset class="start-group">
      <legend>The bell</legend>
      <Button
        icon="bell-ring"
        label="Ring it once"
        onPress={() => {
          alarm.unlock()
          alarm.test()
        }}
      />
      <Choice
        label="Was it heard at the bench?"
        value={model.choice.value.alarm ?? undefined}
        options={[
          { value: 'heard', label: 'Heard it' },
          { value: 'not heard', label: 'Not heard' },
        ]}
        onChange={(heard) => model.change({ alarm: heard })}
      />
      {model.choice.value.alarm === 'not heard' && (
        <Notice
          kind="caution"
          title="Turn the volume up and ring it again. Timers also show at the top and shake the tablet."
        />
      )}
    </fieldset>
  )
}

const Verdict = ({ reading, good, bad }: { reading: CheckReading; good: string; bad: string }) =>
  reading && 'good' in reading ? (
    <Notice kind={reading.good ? 'good' : 'caution'} title={reading.good ? good : bad} live />
  ) : null

/** A field that is still empty is not wrong yet. */
const errorOf = (reading: CheckReading, field: string, text: string): string | undefined => {
  const refusal = reading && 'wrong' in reading && text.trim() !== '' ? reading.wrong[field] : undefined
  return refusal ? sayRefusal(refusal) : undefined
}
