import { useFormat } from '../../../app/format'
import type { KindOf } from '../../../batch/step'
import { HeroNumber, StateLine } from '../../../parts/hero'
import { SayLine } from '../../../parts/say-line'
import type { ThermalWords } from './thermal-words'
import type { StepClock } from './use-clock'
import { useStep } from './use-step'

/** The clock of a hold. */
export function HoldHero({ clock, targetC }: { clock: StepClock; targetC: number }) {
  const format = useFormat()
  const holds = clock.leftMs > 0
  return (
    <>
      <SayLine>{holds ? `Holding at ${targetC} °C` : 'Held'}</SayLine>
      <HeroNumber text={format.duration(clock.leftMs)} size="range" unit={holds ? '' : 'late'} />
      <StateLine
        state={holds ? 'waiting' : 'within'}
        text={holds ? `until ${format.time(clock.deadlineAtMs)}` : 'time is over'}
      />
    </>
  )
}

/** How long it takes, or why that cannot be told. */
export function ForecastHero({ words }: { words: ThermalWords }) {
  return (
    <div class="process-number thermal">
      <SayLine>{words.say}</SayLine>
      <HeroNumber text={words.hero} unit={words.unit} size="range" />
      <StateLine state={words.state.kind} text={words.state.text} />
      {words.fact && <p class="process-fact">{words.fact}</p>}
    </div>
  )
}

interface ReadingHeroProps {
  step: KindOf<'heat'> | KindOf<'cool'>
  reached: boolean
  /** Degrees still to go; null before the first reading. */
  leftC: number | null
}

/** What the thermometer shows, as it is typed or as it was read last. */
export function ThermometerHero({ step, reached, leftC }: ReadingHeroProps) {
  const { state, vessel, format, text } = useStep(step)
  const last = state.vessels.get(vessel)?.readings.at(-1)
  const typed = text('temperature')
  const left =
    leftC === null || typed !== '' ? `to ${step.targetC} °C` : `${format.number(Math.round(leftC * 10) / 10)} °C to go`
  return (
    <>
      <HeroNumber
        text={typed || (last ? format.number(last.temperatureC) : '–')}
        unit="°C"
        size="range"
        empty={typed === '' && !last}
      />
      <StateLine
        state={reached && typed === '' ? 'within' : 'to-go'}
        text={reached && typed === '' ? `${step.targetC} °C reached` : left}
      />
    </>
  )
}
