import { finishWithClock } from './finish-with-clock'
import type { Primary } from './layout'
import type { ThermalAct } from './thermal-act'
import type { ThermalView } from './use-thermal'

/** The one thing to press: what is typed first, then what the temperature allows, then what can be done meanwhile. */
export function thermalPrimary(act: ThermalAct): Primary {
  const { step, reached, run, format, view, clock, entries, typing } = act
  const { temperature, surroundings, meantC, agoMinutes } = entries
  if (temperature.kind === 'number' && meantC !== null)
    return {
      label: `Record ${format.number(meantC)} °C`,
      sub: `from ${format.number(temperature.value)} °F`,
      icon: 'thermometer',
      onPress: () => void entries.recordReading('fahrenheit'),
    }
  if (temperature.kind === 'number')
    return {
      label: `Record ${format.number(temperature.value)} °C`,
      sub: agoMinutes === 0 ? undefined : `read ${agoMinutes} min ago`,
      icon: 'thermometer',
      onPress: () => void entries.recordReading('typed'),
    }
  if (surroundings.kind === 'number')
    return {
      label: `${placeOf(view)} ${format.number(surroundings.value)} °C`,
      icon: 'thermometer',
      onPress: () => void entries.recordSurroundings(),
    }
  if (clock !== null && clock.leftMs > 0) return { label: `${format.duration(clock.leftMs)} to hold`, closed: true }
  if (reached) return onceReached(act)
  if (typing.is) return { label: 'Record', sub: 'type what the thermometer shows', closed: true }
  const first = view.waiting?.steps[0]
  if (view.waiting && first !== undefined)
    return { label: `Weigh phase ${view.waiting.phase}`, icon: 'arrow-right', onPress: () => run.take(first) }
  return { label: 'Type a reading', sub: `to ${step.targetC} °C`, icon: 'thermometer', onPress: typing.open }
}

function onceReached({ step, holdMinutes, run, clock }: ThermalAct): Primary {
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

function placeOf({ course }: ThermalView): string {
  switch (course?.by) {
    case 'bath':
      return 'The bath is at'
    case 'plate':
      return 'The plate is set to'
    default:
      return 'The room is at'
  }
}
