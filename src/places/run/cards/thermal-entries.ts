import { celsiusMeant } from '../../../batch/fahrenheit'
import { isoOf } from '../../../batch/iso-of'
import type { Surroundings } from '../../../batch/kinds'
import type { KindOf } from '../../../batch/step'
import type { ThermalCourse } from '../../../batch/thermal-course'
import type { Typed } from '../typed'
import { useStep } from './use-step'

/** How long ago a reading was taken, in minutes: what one tap after the other goes through. */
const agoSteps = [0, 2, 5, 10] as const

export interface ThermalEntries {
  readonly temperature: Typed
  readonly surroundings: Typed
  /** What the figure is in °C where it looks like °F. */
  readonly meantC: number | null
  readonly agoMinutes: number
  readonly laterStill: () => void
  readonly recordReading: (as: 'typed' | 'fahrenheit') => Promise<void>
  readonly recordSurroundings: () => Promise<void>
  /** Enter: whatever is typed, the reading first. */
  readonly recordTyped: () => Promise<void>
}

/** What is typed on a card of heating or cooling, and how it becomes entries. */
export function useThermalEntries(step: KindOf<'heat'> | KindOf<'cool'>, course: ThermalCourse): ThermalEntries {
  const tools = useStep(step)
  const { run, format, vessel, vesselName } = tools
  const temperature = tools.number('temperature', 'temperature')
  const surroundings = tools.number('surroundings', 'temperature')
  const lastC = course.readings.at(-1)?.temperatureC
  const agoMinutes = Number(tools.text('ago') || '0')
  const meantC =
    temperature.kind === 'number'
      ? celsiusMeant(temperature.value, {
          kind: course.kind,
          targetC: step.targetC,
          ...(lastC === undefined ? {} : { lastC }),
        })
      : null
  const recordReading = async (as: 'typed' | 'fahrenheit') => {
    if (temperature.kind !== 'number') return
    const temperatureC = as === 'fahrenheit' && meantC !== null ? meantC : temperature.value
    const raw = as === 'fahrenheit' ? `${tools.text('temperature')} °F` : tools.text('temperature')
    const clock = run.app.clock
    const late = {
      occurredAt: isoOf(clock.nowMs() - agoMinutes * 60_000, clock.offsetMinutes()),
      reason: `typed ${agoMinutes} min after it was read`,
    }
    const taken = await run.act(
      {
        do: 'read-temperature',
        vessel,
        temperatureC,
        step: step.id,
        source: { kind: 'typed', raw },
        ...(agoMinutes === 0 ? {} : { late }),
      },
      `${vesselName} ${format.number(temperatureC)} °C`,
    )
    if (taken) tools.clear('temperature', 'ago')
  }
  const recordSurroundings = async () => {
    if (surroundings.kind !== 'number') return
    const about = aboutOf(course, vessel, surroundings.value)
    const words = `${format.number(surroundings.value)} °C`
    if (await run.act({ do: 'tell-surroundings', about }, words)) tools.clear('surroundings')
  }
  return {
    temperature,
    surroundings,
    meantC,
    agoMinutes,
    laterStill: () => {
      const next = agoSteps.find((minutes) => minutes > agoMinutes) ?? 0
      run.type('ago', next === 0 ? '' : String(next))
    },
    recordReading,
    recordSurroundings,
    recordTyped: () =>
      temperature.kind === 'number' ? recordReading(meantC === null ? 'typed' : 'fahrenheit') : recordSurroundings(),
  }
}

function aboutOf({ by }: ThermalCourse, vessel: string, temperatureC: number): Surroundings {
  switch (by) {
    case 'air':
      return { of: 'room', temperatureC }
    case 'bath':
      return { of: 'bath', vessel, temperatureC }
    case 'plate':
      return { of: 'plate', vessel, setC: temperatureC }
  }
}
