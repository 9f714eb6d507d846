import type { Check } from '../../../batch/formula'
import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { FactButton } from '../../../parts/chips'
import { HeroNumber, StateLine } from '../../../parts/hero'
import { TypedField } from '../typed-field'
import { lotInUse } from '../weigh-model'
import { adjustRows, lastValueOf } from './adjust-rows'
import { hazardIcon } from './hazard-icon'
import { FinishEarlyAct, NoteAct, type Primary, ProcessLayout } from './layout'
import { ReadingList } from './reading-list'
import { errorOf, useStep } from './use-step'
import { verdictOf } from './verdict'

/** Portions of an adjuster, each followed by a reading, until the window is met. The person says how much. */
export function AdjustCard({ step }: { step: KindOf<'adjust'> }) {
  const { state } = useStep(step)
  const check = state.header.revision.specification.find(({ id }) => id === step.check)
  return check === undefined ? null : <Adjusting step={step} check={check} />
}

function Adjusting({ step, check }: { step: KindOf<'adjust'>; check: Check }) {
  const tools = useStep(step)
  const { run, state, format } = tools
  const planned = state.plan.byId.get(step.id)
  const material = planned?.line?.material
  const stepUg = planned?.line?.balance.stepUg
  const lotId = lotInUse(state, step.id, run.draft.value)
  const lot = planned?.line?.lots.find(({ id }) => id === lotId)
  const value = tools.number('value')
  const portion = tools.mass('portion')
  const last = lastValueOf(state, step.check)
  const shown = value.kind === 'number' ? value.value : last
  const verdict = shown === undefined ? 'open' : verdictOf(shown, check.limits)
  const inUg = state.steps.get(step.id)?.netUg ?? 0

  const addPortion = async () => {
    if (portion.kind !== 'number') return
    const words = `${material?.name ?? 'Portion'} ${format.massWithUnit(portion.value, stepUg)}`
    const lotPart = lotId === undefined ? {} : { lot: lotId }
    if (await run.act({ do: 'adjust', step: step.id, netUg: portion.value, ...lotPart }, words)) {
      tools.clear('portion')
      run.activeField.value = 'value'
    }
  }
  const addReading = async () => {
    if (value.kind !== 'number') return
    const result = {
      step: step.id,
      check: check.id,
      property: check.property,
      label: check.label,
      value: value.value,
      vessel: tools.vessel,
      good: verdict === 'within',
      ...(check.unit === undefined ? {} : { unit: check.unit }),
      ...(check.basis === undefined ? {} : { basis: check.basis }),
    }
    if (await run.act({ do: 'measure', result }, `${check.label} ${format.number(value.value)}`)) {
      tools.clear('value')
      run.activeField.value = 'portion'
    }
  }
  const primary = (): Primary => {
    if (portion.kind === 'number')
      return {
        label: `Record ${format.massWithUnit(portion.value, stepUg)}`,
        sub: material?.name,
        icon: 'arrow-right',
        onPress: () => void addPortion(),
      }
    if (value.kind === 'number')
      return {
        label: `Record ${check.label} ${format.number(value.value)}`,
        icon: 'check',
        onPress: () => void addReading(),
      }
    if (verdict === 'within')
      return {
        label: 'In the window: done',
        icon: 'check',
        onPress: () => void run.act({ do: 'finish-step', step: step.id }),
      }
    return {
      label: 'Record',
      sub: last === undefined ? 'type a first reading' : 'type a portion or a reading',
      closed: true,
    }
  }
  const wait = step.waitMinutes
  return (
    <ProcessLayout
      under={`${material?.name ?? ''}, to ${askOf(step, state.header)}`}
      caution={material?.hazards?.caution}
      cautionIcon={hazardIcon(material?.hazards?.kind)}
      gates={run.gates.value}
      pad
      fact={
        lot && (
          <FactButton
            small="lot"
            bold={lot.code}
            onPress={() => {
              run.sheet.value = { name: 'lot' }
            }}
          />
        )
      }
      side={
        <>
          <ReadingList label={`${check.label} and portions so far`} rows={adjustRows(state, step, check, format)} />
          <div class="process-fields">
            <TypedField
              name="value"
              label={check.label}
              unit={check.unit}
              error={errorOf(value)}
              onEnter={() => void addReading()}
            />
            <TypedField
              name="portion"
              label="Portion"
              unit="g"
              error={errorOf(portion)}
              onEnter={() => void addPortion()}
            />
          </div>
        </>
      }
      why={
        <>
          <b>{format.massWithUnit(inUg, stepUg)} in so far.</b>{' '}
          {wait === undefined ? 'Stir it in, then read again.' : `Stir ${wait} min, then read again.`} Small portions:
          what is in cannot come out.
        </>
      }
      acts={
        <>
          {wait !== undefined && (
            <Button
              icon="hourglass"
              label={`Stir ${wait} min`}
              onPress={() =>
                void run.act({ do: 'start-timer', label: `Stir, then read ${check.label}`, minutes: wait })
              }
            />
          )}
          {verdict === 'within' ? <NoteAct /> : <FinishEarlyAct label="Leave it, say why" />}
        </>
      }
      primary={primary()}
    >
      <HeroNumber
        text={tools.text('value') || (last === undefined ? '–' : format.number(last))}
        unit={check.unit ?? ''}
        size="range"
        empty={shown === undefined}
      />
      <StateLine
        state={verdict === 'within' ? 'within' : 'to-go'}
        text={verdict === 'open' ? 'not read yet' : verdict === 'within' ? 'in the window' : `${verdict} the window`}
      />
      <p class="process-fact">Window {askOf(step, state.header)}</p>
    </ProcessLayout>
  )
}
