import { decimalsOf, formatMass, type Micrograms, massUnits, roundToStep } from '../trade/mass'
import { once } from '../trade/once'
import { useApp } from './app'

/** Figures and moments as this person writes them. */
export interface Format {
  /** Grams without their unit, to the balance's step (0.01 g where none is given). */
  readonly mass: (massUg: Micrograms, stepUg?: Micrograms) => string
  /** With the unit that suits: "1.83 g", "12.4 kg". */
  readonly massWithUnit: (massUg: Micrograms, stepUg?: Micrograms) => string
  readonly percent: (fraction: number, decimals?: number) => string
  readonly number: (value: number, decimals?: number) => string
  /** Local time, hh:mm by the 24 h clock (ISO 8601). */
  readonly time: (atMs: number) => string
  readonly date: (at: number | string) => string
  readonly dateTime: (atMs: number) => string
  /** mm:ss, or h:mm:ss from an hour on; the sign is left to the words beside it. */
  readonly duration: (ms: number) => string
}

/** A figure and its unit stay on one line. */
const noBreak = '\u00a0'

/** What a mass is shown to where no balance says otherwise: 0.01 g. */
const usualStepUg = 10_000

export function createFormat(mark: '.' | ',', locale?: string): Format {
  // Made when first used: the browser's tables of a language cost a start more than all sums together.
  const date = once(() => new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', year: 'numeric' }))
  const number = (value: number, decimals?: number): string =>
    (decimals === undefined ? String(Number(value.toPrecision(12))) : value.toFixed(decimals))
      .replace('.', mark)
      .replace('-', '−')
  const mass = (massUg: Micrograms, stepUg = usualStepUg): string => formatMass(massUg, stepUg, mark)
  return {
    mass,
    massWithUnit: (massUg, stepUg = usualStepUg) => {
      if (Math.abs(massUg) < 10 * massUnits.kg) return `${mass(massUg, stepUg)}${noBreak}g`
      const decimals = Math.max(0, 3 + decimalsOf(stepUg))
      const shown = number(roundToStep(massUg, stepUg) / massUnits.kg, Math.min(decimals, 6))
      return `${shown.includes(mark) ? shown.replace(/0+$/, '').replace(/[.,]$/, '') : shown}${noBreak}kg`
    },
    percent: (fraction, decimals = 2) => `${number(fraction * 100, decimals)}${noBreak}%`,
    number,
    time,
    date: (at) => date().format(typeof at === 'string' ? new Date(at) : at),
    dateTime: (atMs) => `${date().format(atMs)}, ${time(atMs)}`,
    duration,
  }
}

/** The formats of the person at this tablet. */
export function useFormat(): Format {
  const mark = useApp().settings.decimalMark.value
  const known = formats.get(mark)
  if (known !== undefined) return known
  const made = createFormat(mark)
  formats.set(mark, made)
  return made
}

const formats = new Map<string, Format>()

const two = (value: number): string => String(value).padStart(2, '0')

function time(atMs: number): string {
  const at = new Date(atMs)
  return `${two(at.getHours())}:${two(at.getMinutes())}`
}

function duration(ms: number): string {
  const seconds = Math.floor(Math.abs(ms) / 1000)
  const hours = Math.floor(seconds / 3600)
  const rest = `${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`
  return hours > 0 ? `${hours}:${rest}` : rest
}
