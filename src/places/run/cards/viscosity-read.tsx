import type { Check } from '../../../batch/formula'
import type { KindOf } from '../../../batch/step'
import { thickeningOf } from '../../../batch/thickening'
import { HeroNumber, StateLine } from '../../../parts/hero'
import { TypedField } from '../typed-field'
import { AdjustFrame, BackAct, WaitAct } from './adjust-frame'
import { NoteAct, type Primary } from './layout'
import type { AdjustTools } from './use-adjust'
import { errorOf } from './use-step'
import { verdictOf } from './verdict'

/** A viscosity means nothing without its spindle, speed and temperature: they are written down with it. */
export function ViscosityRead({ step, check, tools }: { step: KindOf<'adjust'>; check: Check; tools: AdjustTools }) {
  const { value, format, state } = tools
  const spindle = tools.number('spindle')
  const speed = tools.number('speed')
  const sampleC = tools.number('sampleC', 'temperature')
  const bad = [value, spindle, speed, sampleC].some(({ kind }) => kind === 'bad')
  const verdict = value.kind === 'number' ? verdictOf(value.value, check.limits) : 'open'
  const portions = state.steps.get(step.id)?.portions.length ?? 0
  const conditions = [
    spindle.kind === 'number' ? `spindle ${spindle.value}` : '',
    speed.kind === 'number' ? `${speed.value} rpm` : '',
  ]
    .filter((part) => part !== '')
    .join(', ')
  // Spindle and speed stay for the next reading; the temperature is read anew.
  const record = () =>
    void tools.addReading(
      {
        ...(conditions === '' ? {} : { conditions }),
        ...(sampleC.kind === 'number' ? { sampleC: sampleC.value } : {}),
      },
      'sampleC',
    )
  const unit = check.unit ?? ''
  const primary: Primary =
    value.kind === 'number' && !bad
      ? { label: `Record ${format.number(value.value)} ${unit}`.trim(), icon: 'check', onPress: record }
      : { label: 'Record', sub: 'type what the viscometer shows', closed: true }
  return (
    <AdjustFrame
      step={step}
      tools={tools}
      pad
      side={
        <div class="process-fields">
          <TypedField name="value" label={check.label} unit={unit} error={errorOf(value)} onEnter={record} />
          <TypedField name="sampleC" label="Sample at" unit="°C" error={errorOf(sampleC)} onEnter={record} />
          <TypedField name="spindle" label="Spindle" error={errorOf(spindle)} onEnter={record} />
          <TypedField name="speed" label="Speed" unit="rpm" error={errorOf(speed)} onEnter={record} />
        </div>
      }
      why={portions > 0 ? 'Stir it in, wait, and let the air out: bubbles falsify the reading.' : undefined}
      acts={
        <>
          {thickeningOf(state, step).readings.length > 0 && <BackAct tools={tools} />}
          {portions > 0 ? (
            <WaitAct step={step} tools={tools} label={`Wait, then read ${check.label.toLowerCase()}`} />
          ) : (
            <NoteAct />
          )}
        </>
      }
      primary={primary}
    >
      <HeroNumber text={tools.text('value') || '–'} unit={unit} size="range" empty={value.kind !== 'number'} />
      <StateLine
        state={verdict === 'within' ? 'within' : 'to-go'}
        text={verdict === 'open' ? 'not read yet' : verdict === 'within' ? 'in the window' : `${verdict} the window`}
      />
      {check.method && <p class="process-fact">As the check says: {check.method}.</p>}
    </AdjustFrame>
  )
}
