import type { Micrograms } from '../trade/mass'
import type { MeasureBasis } from './formula'
import type { Bodies, InstrumentCheck, RemedyKind, Surroundings } from './kinds'
import { pullsOf } from './pulls'
import { howWords } from './result-words'

/** How names and figures are said: handed in, because locale and decimal mark are the reader's. */
export interface Say {
  /** As finely as it was written down, or to a step. */
  readonly mass: (massUg: Micrograms, stepUg?: Micrograms) => string
  readonly number: (value: number) => string
  readonly percent: (fraction: number) => string
  readonly duration: (ms: number) => string
  readonly person: (id: string) => string
  readonly line: (id: string) => string
  readonly step: (id: string) => string
  readonly vessel: (id: string) => string
  readonly lot: (id: string) => string
  /** What the entry of that id says, for strike-outs; null where there is none. */
  readonly entry: (id: string) => string | null
}

type Figures = Pick<Say, 'mass' | 'number' | 'percent'>

/** What an instrument check found, without its full stop. */
export function instrumentWords(check: InstrumentCheck, say: Figures): string {
  switch (check.kind) {
    case 'balance': {
      const stepUg = commonStep(check.referenceUg, check.readUg)
      return `Checked ${check.name}: ${say.mass(check.referenceUg, stepUg)} read ${say.mass(check.readUg, stepUg)}`
    }
    case 'pH meter': {
      const buffers = check.buffers.map((buffer) => say.number(buffer)).join(' and ')
      return `Checked ${check.name}: buffers ${buffers}, slope ${say.number(check.slopePercent)} %`
    }
    case 'alarm':
      return check.heard ? 'Tried the bell: heard' : 'Tried the bell: not heard'
  }
}

export function surroundingsWords(about: Surroundings, say: Pick<Say, 'number' | 'vessel'>): string {
  switch (about.of) {
    case 'room':
      return `The room read ${say.number(about.temperatureC)} °C.`
    case 'bath':
      return `The bath of ${say.vessel(about.vessel)} read ${say.number(about.temperatureC)} °C.`
    case 'plate':
      return about.setC === undefined
        ? `${say.vessel(about.vessel)} stands on a plate without a probe.`
        : `${say.vessel(about.vessel)} stands on a plate with a probe, set to ${say.number(about.setC)} °C.`
  }
}

/** The property with its value and how it was read: "pH 5.12, 10 % dilution, 25 °C, 40 °C jar." */
export function measuredWords(body: Bodies['measured'], say: Figures): string {
  const value = body.value === undefined ? (body.text ?? '') : valueWords(body.value, body.unit, say)
  const how = [
    basisWords(body.basis, say),
    body.sampleC === undefined ? '' : `${say.number(body.sampleC)} °C`,
    body.conditions ?? '',
    ...howWords(body, say),
    body.sampleUg === undefined ? '' : `sample of ${say.mass(body.sampleUg)}`,
  ].filter((part) => part !== '')
  return `${body.label}: ${[value, ...how].join(', ')}.`
}

export function basisWords(basis: MeasureBasis | undefined, say: Pick<Say, 'percent'>): string {
  if (basis === undefined) return ''
  return basis.kind === 'neat' ? 'neat' : `${say.percent(basis.fraction)} dilution`
}

export const valueWords = (value: number, unit: string | undefined, say: Pick<Say, 'number'>): string =>
  unit === undefined ? say.number(value) : `${say.number(value)} ${unit}`

export function kindOfRemedy(remedy: RemedyKind): string {
  switch (remedy) {
    case 'accept':
      return 'accept it as it is'
    case 'scale':
      return 'scale the rest'
    case 'smaller':
      return 'make less in the same ratio'
    case 'extra':
      return 'make a little more'
    case 'qs':
      return 'let q.s. give way'
    case 'departure':
      return 'stay as near to the formula as can be'
    case 'cost':
      return 'spend the least'
    case 'discard':
      return 'discard and weigh again'
  }
}

/** The coarsest step, 0.01 g at most, that shows all of the masses without rounding. */
export const commonStep = (...massesUg: readonly Micrograms[]): Micrograms =>
  [10_000, 1000, 100, 10].find((stepUg) => massesUg.every((massUg) => massUg % stepUg === 0)) ?? 1

export function planWords(plan: Bodies['stability-planned']): string {
  const kept = plan.conditions.map(({ label }) => label).join(', ')
  const read = plan.measures.map(({ label }) => label).join(', ')
  return `Planned stability, ${plan.name}: ${pullsOf(plan).length} jars at ${kept}; to read: ${read}.`
}
