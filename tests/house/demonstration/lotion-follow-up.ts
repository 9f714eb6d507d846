import type { Disposition } from '../../../src/batch/kinds.ts'
import { measuresOf } from '../../../src/batch/stability-templates.ts'
import { measure, phReading, startTimer, stopTimer } from './acts.ts'
import type { Bench } from './bench.ts'

/** How the product of one batch behaves once it is made: what is read the next day, and how it drifts. */
export interface Behaviour {
  readonly ph: number
  /** mPa·s at 25 °C, rested. */
  readonly viscosity: number
  /** Fraction of its viscosity that it loses in a week at 40 °C. */
  readonly thinsPerWeek: number
}

const method = 'spindle 4, 12 rpm, 60 s'

/** The jars rest a day; then everything that the specification asks for is read, and the batch is closed. */
export function nextDay(bench: Bench, behaviour: Behaviour, closes: { decision: Disposition; note?: string }): void {
  startTimer(bench, 'rest', 'Rest the sample jars', 24 * 60)
  stopTimer(bench, 'rest', {})
  phReading(bench, behaviour.ph, { step: 'ph-next-day', check: 'ph-rested', label: 'pH, rested' })
  measure(bench, { ...viscosity(bench, behaviour.viscosity), step: 'viscosity-next-day' })
  measure(bench, {
    step: 'appearance-next-day',
    check: 'appearance',
    property: 'appearance',
    label: 'Appearance',
    text: 'white, even, no grain',
    good: true,
  })
  measure(bench, { check: 'odour', property: 'odour', label: 'Odour', text: 'faint, of oats', good: true })
  bench.wait(4)
  bench.by = bench.by === 'person-mo' ? 'person-jt' : 'person-mo'
  bench.intend({ do: 'close', ...closes })
}

/** Weeks after which a jar of each condition is pulled, with the days either side of it that count as in time. */
const weeks = [
  { week: 1, windowDays: 1 },
  { week: 2, windowDays: 1 },
  { week: 4, windowDays: 2 },
  { week: 8, windowDays: 4 },
  { week: 12, windowDays: 4 },
] as const

/** Jars are kept at 25 °C and 40 °C; pH and viscosity are read of each. */
export function planStability(bench: Bench, made: string): void {
  bench.wait(6)
  bench.intend({
    do: 'plan-stability',
    plan: {
      name: '12 weeks, two warmths',
      startsAtMs: Date.parse(`${made}T12:00:00Z`),
      conditions: [
        { id: '25c', label: '25 °C' },
        { id: '40c', label: '40 °C', accelerated: true },
      ],
      pulls: weeks.map(({ week, windowDays }) => ({ day: week * 7, windowDays })),
      measures: measuresOf(bench.state.header.revision.specification).filter(({ id }) =>
        ['ph-rested', 'viscosity'].includes(id),
      ),
    },
  })
}

/** Jars pulled as far as the weeks have come; a week that nobody came to is left out. */
export function stabilityPulls(
  bench: Bench,
  made: string,
  behaviour: Behaviour,
  { until, leftOut }: { readonly until: string; readonly leftOut: readonly number[] },
): void {
  for (const { week } of weeks) {
    const day = dayAfter(made, week * 7)
    if (day > until) return
    if (leftOut.includes(week)) continue
    bench.until(`${day}T09:${10 + week}:00+00:00`)
    bench.by = week % 8 === 0 ? 'person-mo' : 'person-jt'
    for (const temperature of [25, 40] as const) pull(bench, week, temperature, behaviour)
  }
}

function pull(bench: Bench, week: number, temperature: 25 | 40, behaviour: Behaviour): void {
  const conditions = `${temperature} °C, week ${week}`
  const hot = temperature === 40
  const drift = hot ? behaviour.thinsPerWeek : behaviour.thinsPerWeek / 6
  const ph = behaviour.ph - week * (hot ? 0.009 : 0.002) + bench.noise.bell() * 0.012
  phReading(bench, ph, { check: 'ph-rested', label: 'pH, rested', conditions })
  measure(bench, { ...viscosity(bench, behaviour.viscosity * (1 - drift * week)), conditions })
  if (hot && week >= 4)
    measure(bench, {
      check: 'appearance',
      property: 'appearance',
      label: 'Appearance',
      text: week >= 12 ? 'faintly cream, even' : 'white, even, no grain',
      good: true,
      conditions,
    })
}

const viscosity = (bench: Bench, about: number) => ({
  check: 'viscosity',
  property: 'viscosity' as const,
  label: 'Viscosity, rested',
  value: Math.round((about * (1 + bench.noise.bell() * 0.008)) / 50) * 50,
  unit: 'mPa·s',
  text: method,
  sampleC: 25,
})

const dayAfter = (iso: string, days: number): string =>
  new Date(Date.parse(`${iso}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10)
