import { Plot } from '../../../app/late-plot'
import type { Check } from '../../../batch/formula'
import type { KindOf } from '../../../batch/step'
import { thickeningOf } from '../../../batch/thickening'
import { Button } from '../../../parts/button'
import { HeroNumber, StateLine } from '../../../parts/hero'
import { AdjustFrame } from './adjust-frame'
import { AdjustWeigh } from './adjust-weigh'
import { FinishEarlyAct, type Primary } from './layout'
import { type AdjustTools, useAdjust } from './use-adjust'
import { usePlotHeight } from './use-plot-height'
import { useStep } from './use-step'
import { verdictOf } from './verdict'
import { viscosityPicture } from './viscosity-picture'
import { ViscosityRead } from './viscosity-read'

/** Thickening by hand: portions, a wait, the air out, a reading. Nobody can tell beforehand where the maximum is. */
export function ViscosityCard({ step, check }: { step: KindOf<'adjust'>; check: Check }) {
  const { state } = useStep(step)
  const { readings, unread } = thickeningOf(state, step)
  const tools = useAdjust(step, check, readings.length === 0 || unread ? 'read' : 'overview')
  switch (tools.view) {
    case 'read':
      return <ViscosityRead step={step} check={check} tools={tools} />
    case 'weigh':
      return <AdjustWeigh step={step} check={check} tools={tools} />
    case 'overview':
      return <ViscosityOverview step={step} check={check} tools={tools} />
  }
}

function ViscosityOverview({ step, check, tools }: { step: KindOf<'adjust'>; check: Check; tools: AdjustTools }) {
  const { state, run, format } = tools
  const course = thickeningOf(state, step)
  const { readings, thinned, unlike } = course
  const last = readings.at(-1)?.value
  const verdict = last === undefined ? 'open' : verdictOf(last, check.limits)
  const primary = (): Primary =>
    verdict === 'within'
      ? {
          label: 'In the window: done',
          icon: 'check',
          onPress: () => void run.act({ do: 'finish-step', step: step.id }),
        }
      : thinned
        ? { label: `Read ${check.label.toLowerCase()} again`, icon: 'droplets', onPress: () => tools.show('read') }
        : { label: 'Weigh a portion', icon: 'arrow-right', onPress: () => tools.show('weigh') }
  return (
    <AdjustFrame
      step={step}
      tools={tools}
      side={
        readings.length > 0 && (
          <Plot
            label={`${check.label} against grams of ${tools.material?.name ?? ''}`}
            heightPx={usePlotHeight()}
            {...viscosityPicture(course, check, tools.material?.name ?? '', format)}
          />
        )
      }
      why={
        thinned ? (
          <>
            <b>The last portion lowered it.</b> Past its maximum, salt thins: more of it will not thicken again.
          </>
        ) : unlike ? (
          'The last two were read with another spindle, speed or temperature: they cannot be compared.'
        ) : (
          'Small portions: past its maximum, salt thins, and what is in cannot come out.'
        )
      }
      acts={
        <>
          {verdict !== 'within' && thinned && (
            <Button icon="pencil" label="A portion all the same" onPress={() => tools.show('weigh')} />
          )}
          {(verdict === 'within' || !thinned) && (
            <Button
              icon="droplets"
              label={`Read ${check.label.toLowerCase()} again`}
              onPress={() => tools.show('read')}
            />
          )}
          {verdict !== 'within' && <FinishEarlyAct label="Leave it, say why" />}
        </>
      }
      primary={primary()}
    >
      <HeroNumber text={last === undefined ? '–' : format.number(last)} unit={check.unit ?? ''} size="range" />
      <StateLine
        state={verdict === 'within' ? 'within' : thinned ? 'over' : 'to-go'}
        text={verdict === 'within' ? 'in the window' : thinned ? 'it thins' : `${verdict} the window`}
      />
      <p class="process-fact">{tools.shown(course.addedUg)} in so far.</p>
    </AdjustFrame>
  )
}
