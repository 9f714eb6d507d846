import type { Format } from '../../../app/format'
import { meantBy } from '../../../batch/absurd'
import type { Adjusting } from '../../../batch/adjusting'
import type { Check, MeasureBasis } from '../../../batch/formula'
import { phMeterOf } from '../../../batch/ph-meter'
import { hottestSampleC } from '../../../batch/ph-readings'
import type { KindOf } from '../../../batch/step'
import { HeroNumber, StateLine } from '../../../parts/hero'
import { TypedField } from '../typed-field'
import { AdjustFrame, BackAct, WaitAct } from './adjust-frame'
import { NoteAct, type Primary } from './layout'
import { MeantButton } from './meant-button'
import { meterWords } from './ph-words'
import type { AdjustTools } from './use-adjust'
import { errorOf } from './use-step'
import { verdictOf } from './verdict'

interface PhReadProps {
  step: KindOf<'adjust'>
  check: Check
  tools: AdjustTools
  adjusting: Adjusting
}

/** A reading of the meter, with the temperature of the sample and what was taken out for it. */
export function PhRead({ step, check, tools, adjusting }: PhReadProps) {
  const { value, format, state, nowMs } = tools
  const sampleC = tools.number('sampleC', 'temperature')
  const taken = tools.mass('sample')
  const bad = value.kind === 'bad' || sampleC.kind === 'bad' || taken.kind === 'bad'
  const meant = value.kind === 'number' ? meantBy('pH', value.value) : undefined
  const verdict = value.kind === 'number' ? verdictOf(value.value, check.limits) : 'open'
  const last = adjusting.readings.at(-1)
  const unread = last !== undefined && last.addedUg !== adjusting.addedUg
  const record = () =>
    void tools.addReading(
      {
        ...(sampleC.kind === 'number' ? { sampleC: sampleC.value } : {}),
        ...(taken.kind === 'number' && taken.value > 0 ? { sampleUg: taken.value } : {}),
      },
      'sampleC',
      'sample',
    )
  const primary = (): Primary => {
    if (meant !== undefined) return { label: 'Record', sub: 'a pH ends at 14', closed: true }
    if (value.kind !== 'number' || bad) return { label: 'Record', sub: 'type what the meter shows', closed: true }
    return { label: `Record ${check.label} ${format.number(value.value)}`, icon: 'check', onPress: record }
  }
  const basis = check.basis && basisWords(check.basis, format)
  const meter = meterWords(phMeterOf(state, nowMs), format)
  const hot = sampleC.kind === 'number' && sampleC.value > hottestSampleC
  return (
    <AdjustFrame
      step={step}
      tools={tools}
      pad
      side={
        <div class="process-fields">
          <TypedField name="value" label={check.label} error={errorOf(value)} onEnter={record} />
          <TypedField name="sampleC" label="Sample at" unit="°C" error={errorOf(sampleC)} onEnter={record} />
          <TypedField name="sample" label="Taken out" unit="g" error={errorOf(taken)} onEnter={record} />
        </div>
      }
      why={
        hot ? (
          <b>Above {hottestSampleC} °C the reading drifts: cool the sample first.</b>
        ) : unread ? (
          `${step.waitMinutes === undefined ? 'Stir it in' : `Stir ${step.waitMinutes} min`}, then read.`
        ) : undefined
      }
      acts={
        <>
          {last !== undefined && <BackAct tools={tools} />}
          {unread ? <WaitAct step={step} tools={tools} label={`Stir, then read ${check.label}`} /> : <NoteAct />}
        </>
      }
      primary={primary()}
    >
      <HeroNumber text={tools.text('value') || '–'} unit="" size="range" empty={value.kind !== 'number'} />
      {meant === undefined ? (
        <StateLine
          state={verdict === 'within' ? 'within' : 'to-go'}
          text={verdict === 'open' ? 'not read yet' : verdict === 'within' ? 'in the window' : `${verdict} the window`}
        />
      ) : (
        <MeantButton meant={meant} />
      )}
      {basis && <p class="process-fact">{basis}, at one temperature each time.</p>}
      {meter && <p class="process-note">{meter}</p>}
    </AdjustFrame>
  )
}

const basisWords = (basis: MeasureBasis, format: Format): string =>
  basis.kind === 'neat' ? 'Read it neat' : `Read it on a ${format.percent(basis.fraction, 0)} dilution`
