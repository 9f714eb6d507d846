import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { HeroNumber, SayLine, StateLine } from '../../../parts/hero'
import { TypedField } from '../typed-field'
import { FinishEarlyAct, MeanwhileAct, NoteAct, type Primary, ProcessLayout } from './layout'
import { ReadingList } from './reading-list'
import { useClock } from './use-clock'
import { errorOf, useStep } from './use-step'

/** Within this of the figure, a thermometer counts as there. */
const reachedWithinC = 1

/** Heating to a figure, and holding there where the step says so. */
export function HeatCard({ step }: { step: KindOf<'heat'> }) {
  const tools = useStep(step)
  const last = tools.state.vessels.get(tools.vessel)?.readings.at(-1)
  const reached = last !== undefined && last.temperatureC >= step.targetC - reachedWithinC
  return (
    <ThermalCard
      step={step}
      reached={reached}
      leftC={last === undefined ? null : step.targetC - last.temperatureC}
      holdMinutes={step.holdMinutes}
      why={step.covered ? 'Covered, so that little water is lost. ' : ''}
    />
  )
}

/** Cooling, by air or in a bath, to a figure. */
export function CoolCard({ step }: { step: KindOf<'cool'> }) {
  const { state, vessel, run } = useStep(step)
  const last = state.vessels.get(vessel)?.readings.at(-1)
  return (
    <ThermalCard
      step={step}
      reached={last !== undefined && last.temperatureC <= step.targetC}
      leftC={last === undefined ? null : last.temperatureC - step.targetC}
      why={step.by === 'bath' ? 'In a bath, stirring. ' : 'In air, stirring. '}
      act={
        step.by === 'bath' && (
          <Button
            icon="droplets"
            label="Bath changed"
            onPress={() => void run.act({ do: 'change-bath', vessel, what: 'fresh cold water' }, 'Bath changed')}
          />
        )
      }
    />
  )
}

interface ThermalProps {
  step: KindOf<'heat'> | KindOf<'cool'>
  reached: boolean
  /** Degrees still to go; null before the first reading. */
  leftC: number | null
  holdMinutes?: number | undefined
  why: string
  act?: preact.ComponentChildren
}

function ThermalCard({ step, reached, leftC, holdMinutes, why, act }: ThermalProps) {
  const tools = useStep(step)
  const { run, state, format, vessel, vesselName, nowMs } = tools
  const clock = useClock(step.id)
  const typed = tools.number('temperature')
  const last = state.vessels.get(vessel)?.readings.at(-1)
  const record = async () => {
    if (typed.kind !== 'number') return
    const words = `${vesselName} ${format.number(typed.value)} °C`
    if (await run.act({ do: 'read-temperature', vessel, temperatureC: typed.value, step: step.id }, words))
      tools.clear('temperature')
  }
  const primary = (): Primary => {
    if (typed.kind === 'number')
      return { label: `Record ${format.number(typed.value)} °C`, icon: 'thermometer', onPress: () => void record() }
    if (clock !== null && clock.leftMs > 0) return { label: `${format.duration(clock.leftMs)} to hold`, closed: true }
    if (!reached) return { label: 'Record', sub: `type what the thermometer shows`, closed: true }
    if (holdMinutes !== undefined && clock === null)
      return {
        label: `${step.targetC} °C: hold ${holdMinutes} min`,
        icon: 'hourglass',
        onPress: () => void run.act({ do: 'start-timer', label: 'Hold', minutes: holdMinutes, step: step.id }),
      }
    return {
      label: holdMinutes === undefined ? `At ${step.targetC} °C: done` : `Held ${holdMinutes} min: done`,
      icon: 'check',
      onPress: () => void finishWithClock(run, step.id, clock),
    }
  }
  const shown = tools.text('temperature')
  return (
    <ProcessLayout
      under={askOf(step, state.header)}
      gates={run.gates.value}
      pad
      side={
        <>
          <ReadingList
            label={`Temperature of ${vesselName}`}
            rows={(state.vessels.get(vessel)?.readings ?? []).map((reading) => ({
              id: reading.entry,
              at: format.time(reading.atMs),
              text: `${format.number(reading.temperatureC)} °C`,
            }))}
          />
          <TypedField
            name="temperature"
            label="Thermometer"
            unit="°C"
            error={errorOf(typed)}
            onEnter={() => void record()}
          />
        </>
      }
      why={
        last ? (
          <>
            <b>
              Last reading {format.number(last.temperatureC)} °C, {format.ago(nowMs - last.atMs)}.
            </b>{' '}
            {why}
          </>
        ) : (
          `${why}Not read yet.`
        )
      }
      acts={
        <>
          <MeanwhileAct />
          {act || <FinishEarlyAct label="Go on, say why" />}
          {act === undefined && <NoteAct />}
        </>
      }
      primary={primary()}
    >
      {clock !== null ? (
        <>
          <SayLine>{clock.leftMs > 0 ? `Holding at ${step.targetC} °C` : 'Held'}</SayLine>
          <HeroNumber text={format.duration(clock.leftMs)} size="range" unit={clock.leftMs > 0 ? '' : 'late'} />
          <StateLine
            state={clock.leftMs > 0 ? 'waiting' : 'within'}
            text={clock.leftMs > 0 ? `until ${format.time(clock.deadlineAtMs)}` : 'time is over'}
          />
        </>
      ) : (
        <>
          <HeroNumber
            text={shown || (last ? format.number(last.temperatureC) : '–')}
            unit="°C"
            size="range"
            empty={shown === '' && !last}
          />
          <StateLine
            state={reached ? 'within' : 'to-go'}
            text={
              reached
                ? `${step.targetC} °C reached`
                : leftC === null
                  ? `to ${step.targetC} °C`
                  : `${format.number(Math.round(leftC * 10) / 10)} °C to go`
            }
          />
        </>
      )}
    </ProcessLayout>
  )
}

/** Finishes a step and stops its bell, in this order: what is not accepted leaves the bell alone. */
export async function finishWithClock(
  run: ReturnType<typeof useStep>['run'],
  step: string,
  clock: { readonly timer: string } | null,
  more: { readonly saw?: string; readonly toolRpm?: number; readonly checkedBy?: string } = {},
): Promise<void> {
  const finished = await run.act({ do: 'finish-step', step, ...more })
  if (finished && clock !== null) await run.handle.intend({ do: 'acknowledge-timer', timer: clock.timer })
}
