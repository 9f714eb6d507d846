import { ago } from '../../../app/ago'
import { vesselNow } from '../../../batch/progress'
import type { KindOf } from '../../../batch/step'
import { nameOfVessel } from '../../../batch/vessel-name'
import { askOf } from '../../../batch/wording'
import { TypedField } from '../typed-field'
import { EmptyingCard } from './emptying'
import type { Primary } from './layout'
import { errorOf, useStep } from './use-step'

/** One phase into another, both at their temperature. */
export function CombineCard({ step }: { step: KindOf<'combine'> }) {
  const tools = useStep(step)
  const { run, state, format } = tools
  const into = vesselNow(state, step.vessel)
  const asksHeat = step.maxDifferenceC !== undefined || step.bothAtLeastC !== undefined
  const readings = [
    { field: 'intoC', vessel: into, typed: tools.number('intoC', 'temperature') },
    { field: 'fromC', vessel: step.from, typed: tools.number('fromC', 'temperature') },
  ]
  const typed = readings.flatMap((each) => (each.typed.kind === 'number' ? [{ ...each, value: each.typed.value }] : []))
  const record = async () => {
    for (const { field, vessel, value } of typed)
      if (await run.act({ do: 'read-temperature', vessel, temperatureC: value, step: step.id })) tools.clear(field)
  }
  const first: Primary | undefined =
    typed.length === 0
      ? undefined
      : {
          label: `Record ${typed.map(({ value }) => `${format.number(value)} °C`).join(' and ')}`,
          icon: 'thermometer',
          onPress: () => void record(),
        }
  const lastOf = (vessel: string) => {
    const reading = state.vessels.get(vessel)?.readings.at(-1)
    return reading
      ? `${nameOfVessel(state, vessel)} ${format.number(reading.temperatureC)} °C, ${ago(tools.nowMs - reading.atMs)}. `
      : ''
  }
  return (
    <EmptyingCard
      step={step}
      from={step.from}
      under={askOf(step, state.header)}
      why={`${lastOf(into)}${lastOf(step.from)}`}
      first={first}
      fields={
        asksHeat &&
        readings.map(({ field, vessel, typed: each }) => (
          <TypedField
            key={field}
            name={field}
            label={nameOfVessel(state, vessel)}
            unit="°C"
            error={errorOf(each)}
            placeholder={lastFigure(state.vessels.get(vessel)?.readings.at(-1)?.temperatureC, format.number)}
            onEnter={() => void record()}
          />
        ))
      }
    />
  )
}

const lastFigure = (value: number | undefined, number: (value: number) => string): string =>
  value === undefined ? '' : number(value)
