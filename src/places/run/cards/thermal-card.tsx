import './thermal-card.css'
import { useLayoutEffect, useState } from 'preact/hooks'
import type { ThermalCourse } from '../../../batch/thermal-course'
import { askOf } from '../../../batch/wording'
import { Caution } from '../../../parts/notice'
import { useHardwareKeys } from '../../../parts/use-hardware-keys'
import { useRun } from '../run-context'
import { ProcessLayout } from './layout'
import type { ThermalProps, Typing } from './thermal-act'
import { ThermalActs } from './thermal-acts'
import { ThermalChart } from './thermal-chart'
import { useThermalEntries } from './thermal-entries'
import { ThermalEntry } from './thermal-entry'
import { ForecastHero, HoldHero, ThermometerHero } from './thermal-hero'
import { thermalPrimary } from './thermal-primary'
import { ThermalWhy, warningsOf } from './thermal-why'
import { thermalWords } from './thermal-words'
import { useClock } from './use-clock'
import { useStep } from './use-step'
import { type ThermalView, useThermal } from './use-thermal'

/** The thermometer's card: the pad while something is typed, else the curve and when the figure is reached. */
export function ThermalCard(props: ThermalProps) {
  const view = useThermal(props.step)
  return view.course === null ? null : <CourseCard {...props} view={view} course={view.course} />
}

interface CourseProps extends ThermalProps {
  view: ThermalView
  course: ThermalCourse
}

function CourseCard(props: CourseProps) {
  const { step, reached, leftC, view, course } = props
  const { run, state, format, nowMs } = useStep(step)
  const { forecast, waiting } = view
  const clock = useClock(step.id)
  const entries = useThermalEntries(step, course)
  const typing = useTyping(view, course, clock !== null)
  const words = forecast && !reached ? thermalWords(forecast, waiting, nowMs, format) : null
  const act = { ...props, run, format, clock, entries, typing }
  const [warning, ...more] = warningsOf(view, state, format)
  const zoneText =
    course.kind === 'heating' ? 'hot enough' : waiting ? `phase ${waiting.phase} may go in` : 'cool enough'
  return (
    <ProcessLayout
      under={step.instruction ?? askOf(step, state.header)}
      caution={warning}
      gates={run.gates.value}
      pad={typing.is}
      chart={!typing.is}
      side={
        typing.is ? (
          <ThermalEntry step={step} course={course} onEnter={() => void entries.recordTyped()} />
        ) : (
          <div class="thermal-chart">
            {forecast && (
              <ThermalChart
                step={step}
                forecast={forecast}
                says={words ? `${words.say} ${words.hero} ${words.unit}` : ''}
                zoneText={zoneText}
              />
            )}
          </div>
        )
      }
      why={<ThermalWhy {...act} />}
      acts={<ThermalActs {...act} />}
      primary={thermalPrimary(act)}
    >
      {more.map((text) => (
        <Caution key={text} text={text} />
      ))}
      {clock !== null ? (
        <HoldHero clock={clock} targetC={step.targetC} />
      ) : words && !typing.is ? (
        <ForecastHero words={words} />
      ) : (
        <ThermometerHero step={step} reached={reached} leftC={leftC} />
      )}
    </ProcessLayout>
  )
}

/** The pad comes by asking for it, by the first digit, and where there is nothing to draw yet. */
function useTyping({ forecast }: ThermalView, { readings }: ThermalCourse, holds: boolean): Typing {
  const run = useRun()
  const [asked, ask] = useState(false)
  const { temperature, surroundings } = run.draft.value.fields
  const wantsSurroundings = forecast?.outlook.kind === 'ask'
  const is = asked || wantsSurroundings || holds || readings.length === 0 || Boolean(temperature || surroundings)
  useLayoutEffect(() => ask(false), [readings.length])
  useLayoutEffect(() => {
    if (is) run.activeField.value = wantsSurroundings ? 'surroundings' : 'temperature'
  }, [is, wantsSurroundings])
  useHardwareKeys(
    {
      onKey: (key) => {
        if (/^[0-9]$/.test(key)) run.type('temperature', key)
        return /^[0-9]$/.test(key)
      },
      onPaste: (text) => run.type('temperature', text),
    },
    !is && run.sheet.value === null,
  )
  return { is, open: () => ask(true), close: () => ask(false) }
}
