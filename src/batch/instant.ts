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
  const [year, month, day] = [part(1), part(2), part(3)]
  const days = daysOf(year, month, day)
  // A day that is not there would be one of the month after.
  if (month < 1 || month > 12 || day < 1 || days >= daysOf(year, month + 1, 1)) return Number.NaN
  return days * dayMs + clockMs - offsetOf(match[8]) * 60_000
}

function offsetOf(text: string | undefined): number {
  if (text === undefined || text === 'Z') return 0
  const minutes = Number(text.slice(1, 3)) * 60 + Number(text.slice(4, 6))
  return text.startsWith('-') ? -minutes : minutes
}

/** Days since 1970-01-01 of a Gregorian date; month 13 is the next January (Hinnant, "chrono-compatible low-level date algorithms"). */
function daysOf(year: number, month: number, day: number): number {
  const shifted = month <= 2 ? year - 1 : year
  const era = Math.floor(shifted / 400)
  const yearOfEra = shifted - era * 400
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  return era * 146_097 + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - 719_468
}
