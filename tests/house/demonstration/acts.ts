import type { Source } from '../../../src/batch/event.ts'
import type { Bodies } from '../../../src/batch/kinds.ts'
import { weighingOf } from '../../../src/batch/weighing-of.ts'
import { massIn } from '../../../src/trade/ledger.ts'
import { formatMass, type Micrograms, roundToStep } from '../../../src/trade/mass.ts'
import type { Bench } from './bench.ts'
import { g } from './mass.ts'

/** What a person does at the bench, in small acts with the scatter of a real hand. */
const typed = (massUg: Micrograms, stepUg: Micrograms): Source => ({
  kind: 'typed',
  raw: formatMass(massUg, stepUg, '.'),
})

/** Weighs a line to within its band; `massUg` is for what goes wrong. */
export function weigh(bench: Bench, step: string, massUg?: Micrograms, checkedBy?: string): string {
  const weighing = weighingOf(bench.state, step)
  if (weighing === null) throw new Error(`nothing to weigh in ${step}`)
  const { leftUg, leftLowUg, leftHighUg, stepUg } = weighing
  const aimed = leftUg + ((bench.noise.bell() * (leftHighUg - leftLowUg)) / 2) * 0.35
  const low = Math.ceil(leftLowUg / stepUg) * stepUg
  const high = Math.floor(leftHighUg / stepUg) * stepUg
  const readingUg = massUg ?? Math.min(high, Math.max(low, roundToStep(Math.round(aimed), stepUg)))
  bench.wait(bench.noise.between(1.2, 2.8))
  const [event] = bench.intend({
    do: 'weigh',
    step,
    reading: { mode: 're-tare', readingUg },
    source: typed(readingUg, stepUg),
    ...(checkedBy === undefined ? {} : { checkedBy }),
  })
  return event?.id ?? ''
}

/** Weighs it as the formula has it checked: by the second person of this batch. */
export const weighChecked = (bench: Bench, step: string, massUg?: Micrograms): string =>
  weigh(bench, step, massUg, bench.by === 'person-jt' ? 'person-mo' : 'person-jt')

export function tipIn(bench: Bench, step: string, rinseUg: Micrograms): void {
  bench.wait(bench.noise.between(1.5, 3))
  const residueUg = roundToStep(Math.round(bench.noise.between(0.02, 0.09) * g(1)), g(0.01))
  bench.intend({ do: 'charge', step, residueUg, rinseUg })
}

/** Starts a step's timer on its condition. */
export function startTimer(bench: Bench, step: string, label: string, minutes: number): void {
  bench.wait(bench.noise.between(0.5, 1))
  bench.intend({ do: 'start-timer', step, label, minutes })
}

/** Lets a step's timer run out, stops its bell a little late, and finishes the step. */
export function stopTimer(bench: Bench, step: string, finish: { saw?: string; toolRpm?: number }): void {
  const timer = bench.state.timers.get(bench.state.steps.get(step)?.timer ?? '')
  if (timer === undefined) throw new Error(`no timer in ${step}`)
  const leftMinutes = (timer.deadlineAtMs - bench.nowMs) / 60_000
  bench.wait(Math.max(0.1, leftMinutes + bench.noise.between(0.1, 0.7)))
  bench.intend({ do: 'acknowledge-timer', timer: timer.id })
  bench.wait(0.2)
  bench.intend({ do: 'finish-step', step, ...finish })
}

/** Reads a vessel while it goes from one temperature to another, closing in as heating and cooling do. */
export function readAlong(bench: Bench, vessel: string, temperatures: readonly number[], minutesApart: number): void {
  for (const temperatureC of temperatures) {
    bench.wait(minutesApart + bench.noise.between(-0.4, 0.4))
    const read = Number((temperatureC + bench.noise.bell() * 0.2).toFixed(1))
    bench.intend({ do: 'read-temperature', vessel, temperatureC: read })
  }
}

export function measure(bench: Bench, result: Bodies['measured']): void {
  bench.wait(bench.noise.between(1, 2))
  bench.intend({ do: 'measure', result })
}

/** A pH on the 10 % dilution that the lotion is read in. */
export const phReading = (
  bench: Bench,
  value: number,
  about: Pick<Bodies['measured'], 'check' | 'label'> & Partial<Bodies['measured']>,
): void =>
  measure(bench, {
    property: 'pH',
    value: Number(value.toFixed(2)),
    basis: { kind: 'dilution', fraction: 0.1 },
    sampleC: Number((25 + bench.noise.bell() * 0.2).toFixed(1)),
    ...about,
  })

/** Instruments looked over before the first weighing. */
export function checkInstruments(bench: Bench): void {
  const [fine, large] = bench.state.header.balances
  if (fine === undefined || large === undefined) throw new Error('two balances are needed')
  const offUg = bench.noise.whole(-1, 1) * fine.stepUg
  for (const check of [
    { kind: 'balance', id: fine.id, name: fine.name, referenceUg: g(20), readUg: g(20) + offUg },
    { kind: 'balance', id: large.id, name: large.name, referenceUg: g(200), readUg: g(200) },
    {
      kind: 'pH meter',
      name: 'pH meter',
      slopePercent: Number(bench.noise.between(96.4, 98.9).toFixed(1)),
      buffers: [4.01, 7],
    },
  ] as const) {
    bench.wait(1.5)
    bench.intend({ do: 'check-instrument', check, good: true })
  }
}

export const massOf = (bench: Bench, vessel: string): Micrograms => massIn(bench.state.ledger, vessel)
