import type { TimerRow } from '../../batch/record-timers'
import type { PaperProps } from './paper-props'

/** Every timer: what was planned, how long it took until somebody stopped the bell. */
export function PaperTimers({ record, format }: PaperProps) {
  if (record.timers.length === 0) return null
  return (
    <section class="paper-section">
      <h2>Timers</h2>
      <table class="paper-table">
        <thead>
          <tr>
            <th scope="col">Started</th>
            <th scope="col">Timer</th>
            <th scope="col" class="paper-number">
              Planned
            </th>
            <th scope="col" class="paper-number">
              Actual
            </th>
          </tr>
        </thead>
        <tbody>
          {record.timers.map((timer) => (
            <tr key={timer.entry} id={`entry-${timer.entry}`}>
              <td class="paper-time">
                {format.time(timer.atMs)} <span class="paper-small">{timer.by}</span>
              </td>
              <td>{timer.label}</td>
              <td class="paper-number">{format.duration(timer.plannedMs)}</td>
              <td class="paper-number">{actualWords(timer, format)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function actualWords({ actualMs, lateMs = 0 }: TimerRow, format: PaperProps['format']): string {
  if (actualMs === undefined) return 'not stopped'
  const off = Math.abs(lateMs) < 60_000 ? '' : `, ${format.duration(lateMs)} ${lateMs > 0 ? 'late' : 'early'}`
  return `${format.duration(actualMs)}${off}`
}
