import type { StartRefusal } from '../../app/refusals/forms-start'
import type { Balance } from '../../batch/catalogue'
import type { Intention } from '../../batch/intention'
import type { InstrumentCheck } from '../../batch/kinds'
import { type Micrograms, roundUpToStep } from '../../trade/mass'
import { type NumberRefusal, readDecimal, readMass } from '../../trade/number-text'
import { accept, type Result, refuse } from '../../trade/result'
import type { Choice } from './choice'

/** A check that was made, or what is wrong with what was typed, by field; null where nothing was typed. */
export type CheckReading =
  | { readonly check: InstrumentCheck; readonly good: boolean }
  | { readonly wrong: Readonly<Record<string, NumberRefusal | StartRefusal>> }
  | null

/**
 * How far a reference mass may be read off: twice the repeatability (never less than 0.41 d) and the non-linearity,
 * rounded up to a step.
 */
export function allowedUg({ stepUg, repeatabilityUg, linearityUg = 0 }: Balance): Micrograms {
  return roundUpToStep(Math.ceil(2 * Math.max(repeatabilityUg, 0.41 * stepUg) + linearityUg), stepUg)
}

export function balanceCheckOf(balance: Balance, choice: Choice): CheckReading {
  const { reference = '', read = '' } = choice.balanceChecks[balance.id] ?? {}
  if (reference.trim() === '' && read.trim() === '') return null
  const typed = { reference: readMass(reference, positive), read: readMass(read, positive) }
  if (typed.reference.ok && typed.read.ok) {
    const [referenceUg, readUg] = [typed.reference.value, typed.read.value]
    const good = Math.abs(readUg - referenceUg) <= allowedUg(balance)
    return { check: { kind: 'balance', id: balance.id, name: balance.name, referenceUg, readUg }, good }
  }
  return { wrong: refusalsOf(typed) }
}

/** Good between 95 and 105 % of the Nernst slope, on two buffers or more. */
export function meterCheckOf({ slope, buffers }: Choice): CheckReading {
  if (slope.trim() === '' && buffers.trim() === '') return null
  const typed = { slope: readSlope(slope), buffers: readBuffers(buffers) }
  if (typed.slope.ok && typed.buffers.ok) {
    const slopePercent = typed.slope.value
    const good = slopePercent >= 95 && slopePercent <= 105
    return { check: { kind: 'pH meter', name: 'pH meter', slopePercent, buffers: typed.buffers.value }, good }
  }
  return { wrong: refusalsOf(typed) }
}

/** What was checked, as entries of the batch. */
export function checksOf(choice: Choice, balances: readonly Balance[]): readonly Intention[] {
  const made = readingsOf(choice, balances).flatMap((reading) => (reading && 'check' in reading ? [reading] : []))
  const heard = choice.alarm === 'heard'
  const bell = choice.alarm === null ? [] : [{ check: { kind: 'alarm' as const, heard }, good: heard }]
  return [...made, ...bell].map(({ check, good }) => ({ do: 'check-instrument', check, good }))
}

/** Whether something typed for a check cannot be read. */
export const areWrong = (choice: Choice, balances: readonly Balance[]): boolean =>
  readingsOf(choice, balances).some((reading) => reading !== null && 'wrong' in reading)

export function ambientRefusal({ ambient }: Choice): NumberRefusal | StartRefusal | null {
  if (ambient.trim() === '') return null
  const read = readDecimal(ambient)
  if (!read.ok) return read.refusal
  return read.value >= -10 && read.value <= 60 ? null : { code: 'START_AMBIENT_ABSURD', temperatureC: read.value }
}

const readingsOf = (choice: Choice, balances: readonly Balance[]): CheckReading[] => [
  ...balances.map((balance) => balanceCheckOf(balance, choice)),
  meterCheckOf(choice),
]

const positive = { negative: false, zero: false } as const

function readSlope(text: string): Result<number, NumberRefusal | StartRefusal> {
  const read = readDecimal(text.replace(/\s*%\s*$/, ''), positive)
  if (!read.ok) return read
  return read.value >= 50 && read.value <= 150 ? read : refuse({ code: 'START_SLOPE_ABSURD', percent: read.value })
}

/** "4.01 7.00", "4,01; 7,00": blanks or semicolons part them, so that either decimal mark can be used. */
function readBuffers(text: string): Result<readonly number[], StartRefusal> {
  const parts = text.split(/[\s;/]+/).filter((part) => part !== '')
  const values = parts.map((part) => readDecimal(part, { negative: false, max: 14 }))
  const numbers = values.flatMap((value) => (value.ok ? [value.value] : []))
  if (numbers.length < parts.length || new Set(numbers).size < 2) return refuse({ code: 'START_BUFFERS_UNCLEAR' })
  return accept(numbers)
}

function refusalsOf<R>(typed: Record<string, Result<unknown, R>>): Record<string, R> {
  return Object.fromEntries(
    Object.entries(typed).flatMap(([field, result]) => (result.ok ? [] : [[field, result.refusal] as const])),
  )
}
