import { dayMs } from './instant'

/** ms UTC as ISO 8601 with the local offset, e.g. 2026-06-16T10:35:00.000+01:00. */
export function isoOf(atMs: number, offsetMinutes: number): string {
  const localMs = Math.floor(atMs) + offsetMinutes * 60_000
  const days = Math.floor(localMs / dayMs)
  const restMs = localMs - days * dayMs
  const [year, month, day] = dateOf(days)
  const two = (value: number): string => String(Math.floor(value)).padStart(2, '0')
  const size = Math.abs(offsetMinutes)
  const offset = offsetMinutes === 0 ? 'Z' : `${offsetMinutes < 0 ? '-' : '+'}${two(size / 60)}:${two(size % 60)}`
  const clock = `${two(restMs / 3_600_000)}:${two((restMs / 60_000) % 60)}:${two((restMs / 1000) % 60)}`
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}T${clock}.${String(restMs % 1000).padStart(3, '0')}${offset}`
}

/** The local calendar date of a moment, as ISO text. */
export const dateIsoOf = (atMs: number, offsetMinutes: number): string => isoOf(atMs, offsetMinutes).slice(0, 10)

/** Year, month and day of the days since 1970-01-01 (Hinnant, "chrono-compatible low-level date algorithms"). */
function dateOf(days: number): [number, number, number] {
  const shifted = days + 719_468
  const era = Math.floor(shifted / 146_097)
  const dayOfEra = shifted - era * 146_097
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153)
  const month = monthFromMarch + (monthFromMarch < 10 ? 3 : -9)
  const day = dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1
  return [yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day]
}
