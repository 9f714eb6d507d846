export const dayMs = 86_400_000
const iso = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{1,3})\d*)?)?(Z|[+-]\d{2}:\d{2})?)?$/

/** ISO 8601 text as ms UTC; a bare date is its midnight UTC. NaN for anything else, and for days that are not there. */
export function msOf(text: string): number {
  const match = iso.exec(text)
  if (match === null) return Number.NaN
  const part = (index: number): number => Number(match[index] ?? 0)
  if (part(4) > 23 || part(5) > 59 || part(6) > 59) return Number.NaN
  const fraction = Number((match[7] ?? '').padEnd(3, '0'))
  const clockMs = ((part(4) * 60 + part(5)) * 60 + part(6)) * 1000 + fraction
  const days = daysOf(part(1), part(2), part(3))
  const [, month, day] = dateOf(days)
  if (month !== part(2) || day !== part(3)) return Number.NaN
  return days * dayMs + clockMs - offsetOf(match[8]) * 60_000
}

function offsetOf(text: string | undefined): number {
  if (text === undefined || text === 'Z') return 0
  const minutes = Number(text.slice(1, 3)) * 60 + Number(text.slice(4, 6))
  return text.startsWith('-') ? -minutes : minutes
}

/** Days since 1970-01-01 of a Gregorian date (Hinnant, "chrono-compatible low-level date algorithms"). */
function daysOf(year: number, month: number, day: number): number {
  const shifted = month <= 2 ? year - 1 : year
  const era = Math.floor(shifted / 400)
  const yearOfEra = shifted - era * 400
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  return era * 146_097 + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - 719_468
}

/** Year, month and day of the days since 1970-01-01. */
export function dateOf(days: number): [number, number, number] {
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
