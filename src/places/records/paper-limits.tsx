import type { Format } from '../../app/format'
import type { SharedLimit } from '../../batch/formula'
import type { LimitRow } from '../../batch/record-limits'
import { overWhat } from '../../batch/shared-limits'
import type { PaperProps } from './paper-props'

/** Limits over several lines together, with what the batch came to. */
export function PaperLimits({ record, format }: Pick<PaperProps, 'record' | 'format'>) {
  if (record.limits.length === 0) return null
  return (
    <ul class="paper-notes" aria-label="Limits over several lines">
      {record.limits.map((row) => (
        <li key={row.limit.id}>
          {row.limit.name} ({overWhat(row.limit)}), {allowedText(row.limit, format)}
          {asMadeText(row, record.closed !== null, format)}
        </li>
      ))}
    </ul>
  )
}

export function allowedText({ min, max }: SharedLimit, format: Format): string {
  const figure = (fraction: number): string => format.number(Number((fraction * 100).toFixed(4)))
  if (min !== undefined && max !== undefined) return `${figure(min)} to ${figure(max)} %`
  if (max !== undefined) return `at most ${figure(max)} %`
  return min === undefined ? 'no figure' : `at least ${figure(min)} %`
}

function asMadeText({ asMade, verdict }: LimitRow, isClosed: boolean, format: Format) {
  if (asMade === undefined) return '.'
  const figure = `: ${isClosed ? 'as made' : 'so far'} ${format.percent(asMade)}`
  // What is still to come moves it: a batch in hand is not judged.
  if (!isClosed) return `${figure}.`
  return verdict === 'outside' ? (
    <>
      {figure}, <strong>outside</strong>.
    </>
  ) : (
    `${figure}, within.`
  )
}
