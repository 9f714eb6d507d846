import type { Micrograms } from '../trade/mass'
import type { Check, MeasureBasis, Property, Scale } from './formula'

/** One result: a figure with its unit, or words. */
export interface Measured {
  readonly step?: string
  readonly check?: string
  readonly property: Property
  readonly label: string
  readonly value?: number
  readonly text?: string
  readonly unit?: string
  readonly basis?: MeasureBasis
  readonly sampleC?: number
  readonly sampleUg?: Micrograms
  readonly vessel?: string
  readonly conditions?: string
  readonly good?: boolean
  /** Each reading as it was taken, where there were several: `value` is their mean. */
  readonly readings?: readonly number[]
  readonly how?: HowRead
}

/** How a result was come by, beside its figure: what its property asks for, as far as it was told. */
export interface HowRead {
  readonly spindle?: string
  readonly rpm?: number
  /** Of the viscometer's full scale. */
  readonly torquePercent?: number
  /** What so much of it weighed: a density comes from the two. */
  readonly massUg?: Micrograms
  readonly volumeMl?: number
  /** Beside the standard that is kept. */
  readonly difference?: Difference
  /** Read once more after so many minutes, in the unit of the result. */
  readonly later?: { readonly minutes: number; readonly value: number }
  readonly spin?: Spin
  readonly scale?: Scale
}

export type Difference = 'none' | 'slight' | 'clear'

/** A centrifuge turns at so many rpm, or at so many times gravity. */
export interface Spin {
  readonly by: 'rpm' | 'g'
  readonly figure: number
  readonly minutes: number
  readonly separated: boolean
}

/** Nine steps, taken where a check names no scale of its own. */
const usualScale: Scale = { least: 1, most: 9, low: 'not at all as it should feel', high: 'just as it should feel' }

export const scaleOf = (check: Pick<Check, 'scale'> | undefined): Scale => check?.scale ?? usualScale

/** The minutes after which foam is read again. */
export const foamMinutes = 5

/** The unit that the check names, else the one its property is read in; undefined where only a person can say. */
export const unitOf = ({ property, unit }: Pick<Check, 'property' | 'unit'>): string | undefined =>
  unit ?? units[property]

const units: { readonly [P in Property]?: string } = {
  viscosity: 'mPa·s',
  density: 'g/mL',
  temperature: '°C',
  foam: 'mm',
}

/** A figure of these needs no unit: a pH and a step of a scale are numbers by themselves. */
export const needsUnit = (property: Property): boolean => property !== 'pH' && property !== 'feel'

/** A viscometer reads well between a tenth of its full scale and all of it. */
export const torqueIsOff = ({ torquePercent }: HowRead): boolean =>
  torquePercent !== undefined && !(torquePercent >= 10 && torquePercent <= 100)

/** g/mL of a mass in so much room. */
export const densityOf = (massUg: Micrograms, volumeMl: number): number =>
  Number((massUg / 1e6 / volumeMl).toPrecision(6))
