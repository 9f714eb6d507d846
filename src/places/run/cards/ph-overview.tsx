import { Plot } from '../../../app/late-plot'
import { adjustSentences } from '../../../app/refusals/adjusting'
import { sayFrom } from '../../../app/refusals/sentences'
import type { Adjusting } from '../../../batch/adjusting'
import { phMeterOf } from '../../../batch/ph-meter'
import type { KindOf } from '../../../batch/step'
import { Button } from '../../../parts/button'
import { HeroNumber, StateLine } from '../../../parts/hero'
import { SayLine } from '../../../parts/say-line'
import { AdjustFrame } from './adjust-frame'
import { FinishEarlyAct, type Primary } from './layout'
import { phPicture } from './ph-picture'
import { againWords, meterWords, stopWords, whyWords } from './ph-words'
import type { AdjustTools } from './use-adjust'
import { usePlotHeight } from './use-plot-height'
import { verdictOf } from './verdict'

interface PhOverviewProps {
  step: KindOf<'adjust'>
  tools: AdjustTools
  adjusting: Adjusting
}

/** The curve so far, and the addition that is proposed with its reason, or why there is none. */
export function PhOverview({ step, tools, adjusting }: PhOverviewProps) {
  const { run, state, format, shown, nowMs, stepUg } = tools
  const { check, readings, advice } = adjusting
  const last = readings.at(-1)
  const reading = last === undefined ? '–' : format.number(last.ph, 2)
  const value = advice.ok ? advice.value : null
  const isWithin = last !== undefined && verdictOf(last.ph, check.limits) === 'within'
  const isIn = isWithin && value?.do === 'stop'
  const finish = () => void run.act({ do: 'finish-step', step: step.id })
  const primary = (): Primary => {
    if (value?.do === 'add')
      return { label: `Weigh ${shown(value.doseUg)}`, icon: 'arrow-right', onPress: () => tools.show('weigh') }
    if (isIn) return { label: 'In the window: done', icon: 'check', onPress: finish }
    return { label: `Read ${check.label} again`, icon: 'droplets', onPress: () => tools.show('read') }
  }
  const meter = meterWords(phMeterOf(state, nowMs), format)
  return (
    <AdjustFrame
      step={step}
      tools={tools}
      side={
        readings.length > 0 && (
          <Plot
            label={`${check.label} against grams of ${adjusting.line.material.name}`}
            heightPx={usePlotHeight()}
            {...phPicture(adjusting, format)}
          />
        )
      }
      why={<Why adjusting={adjusting} tools={tools} />}
      acts={
        <>
          {isIn || <Button icon="pencil" label="Another amount" onPress={() => tools.show('weigh')} />}
          {isWithin && value?.do === 'add' && <Button icon="check" label="Leave it there" onPress={finish} />}
          {(isIn || (value?.do === 'add' && !isWithin)) && (
            <Button icon="droplets" label={`Read ${check.label} again`} onPress={() => tools.show('read')} />
          )}
          {value?.do !== 'add' && !isIn && <FinishEarlyAct label="Leave it, say why" />}
        </>
      }
      primary={primary()}
    >
      {value?.do === 'add' ? (
        <>
          <SayLine>
            {check.label} {reading} now. Add
          </SayLine>
          <HeroNumber text={format.mass(value.doseUg, stepUg)} unit="g" />
          <p class="process-fact">
            then {step.waitMinutes === undefined ? 'stir' : `stir ${step.waitMinutes} min`} and read again
          </p>
        </>
      ) : (
        <>
          <HeroNumber text={reading} size="range" />
          <Standing adjusting={adjusting} tools={tools} />
        </>
      )}
      {meter && <p class="process-note">{meter}</p>}
    </AdjustFrame>
  )
}

/** How the last reading stands, where nothing is proposed. */
function Standing({ adjusting, tools }: { adjusting: Adjusting; tools: AdjustTools }) {
  const { advice } = adjusting
  if (!advice.ok) return <StateLine state="waiting" text="no amount proposed" />
  if (advice.value.do === 'read-again') return <StateLine state="waiting" text="the meter has not settled" />
  if (advice.value.do !== 'stop') return null
  const { good, lead } = stopWords(advice.value.why, adjusting, tools.format)
  return <StateLine state={good ? 'within' : 'over'} text={lead} />
}

function Why({ adjusting, tools }: { adjusting: Adjusting; tools: AdjustTools }) {
  const { advice } = adjusting
  const { format, shown } = tools
  if (!advice.ok) return <>{sayFrom(adjustSentences, advice.refusal)}</>
  switch (advice.value.do) {
    case 'read-again':
      return <>{againWords(advice.value, format)}</>
    case 'stop':
      return <>{stopWords(advice.value.why, adjusting, format).text}</>
    case 'add': {
      const { lead, text } = whyWords(advice.value, adjusting, format)
      return (
        <>
          <b>{lead}</b> {text}
          {advice.value.dilute && (
            <span class="process-note">
              {' '}
              That is only a few steps of {shown(tools.stepUg)}: dilute the adjuster, and weigh more of it.
            </span>
          )}
        </>
      )
    }
  }
}
