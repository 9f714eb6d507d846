import type { Format } from '../../app/format'
import { capital } from '../../batch/capital'
import type { BatchRecord } from '../../batch/record'
import { courseOf, type TemperatureReading } from '../../batch/record-readings'
import type { StepRow } from '../../batch/record-steps'
import { tipSpeed } from '../../trade/mixing'
import { figure } from './figure'
import type { PaperProps } from './paper-props'

/** When each step of the process began and ended, what was read, how long it took, and the gates that were passed. */
export function PaperSteps({ record, format, say }: PaperProps) {
  const begun = record.steps.filter((row) => row.startedAtMs !== undefined || row.finished || row.gates.length > 0)
  const left = record.steps.length - begun.length
  return (
    <section class="paper-section">
      <h2>Steps</h2>
      <StepTable rows={begun} record={record} format={format} say={say} />
      {left > 0 && <p class="paper-quiet">{left === 1 ? 'One step was' : `${left} steps were`} not begun.</p>}
    </section>
  )
}

export const StepTable = ({ rows, ...paper }: PaperProps & { rows: readonly StepRow[] }) => (
  <table class="paper-table paper-steps">
    <thead class="visually-hidden">
      <tr>
        <th scope="col">Time</th>
        <th scope="col">Step</th>
        <th scope="col">What was read</th>
      </tr>
    </thead>
    <tbody>
      {rows.map((row) => (
        <StepLine key={row.planned.id} row={row} {...paper} />
      ))}
    </tbody>
  </table>
)

interface StepLineProps extends PaperProps {
  row: StepRow
}

function StepLine({ row, record, format, say }: StepLineProps) {
  const { finished, planned } = row
  const atMs = row.startedAtMs ?? finished?.atMs
  return (
    <tr id={`done-${planned.id}`}>
      <td class="paper-time">{atMs === undefined ? '' : momentWords(atMs, record, format)}</td>
      <td>
        {say.step(planned.id)}
        <span class="paper-small">
          {' '}
          {[row.by, row.checkedBy ? `checked ${row.checkedBy}` : ''].filter(Boolean).join(', ')}
          {finished?.how === 'skipped' && `. Skipped: ${finished.note ?? ''}`}
          {finished?.how === 'done' && finished.note ? `. ${capital(finished.note)}` : ''}
        </span>
        {row.marks.map((mark) => (
          <span key={mark.atMs} class="paper-small">
            {' '}
            {format.time(mark.atMs)}: {mark.what}.
          </span>
        ))}
        {row.gates.map((gate) => (
          <span key={gate.entry} id={`entry-${gate.entry}`} class="paper-gate">
            Went on all the same, {format.time(gate.atMs)} {gate.by}: {gate.detail} ({gate.reason}).
          </span>
        ))}
      </td>
      <td class="paper-number">{readWords(row, record, format)}</td>
    </tr>
  )
}

/** The time; the day too where it is not the day the batch was opened. */
function momentWords(atMs: number, record: BatchRecord, format: Format): string {
  const opened = record.opened === null ? '' : format.date(record.opened.atMs)
  return format.date(atMs) === opened
    ? format.time(atMs)
    : `${format.date(atMs).replace(/,? \d{4}$/, '')} ${format.time(atMs)}`
}

function readWords(row: StepRow, record: BatchRecord, format: Format): string {
  const { step } = row.planned
  const parts = [courseWords(row, format), movedWords(row, format), timerWords(row, format), speedWords(row, format)]
  switch (step.kind) {
    case 'adjust':
      parts.push(adjustWords(row, record, format))
      break
    case 'make-up':
      parts.push(
        ...record.mass.makeUps.filter((each) => !each.struck).map((each) => `+ ${format.massWithUnit(each.netUg)}`),
      )
      break
    case 'sample':
      parts.push(
        ...record.mass.samples
          // What a reading took out has no jar, and stands in the trail.
          .filter((each) => !each.struck && each.jars > 0)
          .map((each) => `${each.jars} jars, ${format.massWithUnit(each.massUg)}`),
      )
      break
    case 'fill':
      parts.push(
        ...record.mass.fills
          .filter((each) => !each.struck)
          .map((each) => `${each.units} units, ${format.massWithUnit(each.massUg)}`),
      )
      break
    case 'measure':
      parts.push('see results')
      break
    default:
      break
  }
  return parts.filter((part) => part !== '').join(', ')
}

/** "21.5 °C 10:02 → 75.2 °C 10:31, highest 78.0 °C 10:28" */
function courseWords({ readings }: StepRow, format: Format): string {
  const course = courseOf(readings)
  if (course === null) return ''
  const said = ({ temperatureC, atMs }: TemperatureReading): string =>
    `${format.number(temperatureC, 1)} °C ${format.time(atMs)}`
  const { first, last, highest, lowest } = course
  return [
    first === last ? said(last) : `${said(first)} → ${said(last)}`,
    highest ? `highest ${said(highest)}` : '',
    lowest ? `lowest ${said(lowest)}` : '',
  ]
    .filter((part) => part !== '')
    .join(', ')
}

function movedWords({ moved }: StepRow, format: Format): string {
  if (moved === undefined) return ''
  const temperatures =
    moved.fromC === undefined || moved.toC === undefined
      ? ''
      : `${format.number(moved.fromC, 1)} into ${format.number(moved.toC, 1)} °C, `
  const rinse = moved.rinseUg > 0 ? `rinsed ${format.massWithUnit(moved.rinseUg)}, ` : ''
  return `${temperatures}${rinse}left ${format.massWithUnit(moved.residueUg)}`
}

function timerWords({ timer, startedAtMs }: StepRow, format: Format): string {
  if (timer === undefined) return ''
  const planned = hoursOrMinutes(timer.plannedMs)
  if (timer.actualMs === undefined || startedAtMs === undefined) return `${planned}, not over`
  const late = (timer.lateMs ?? 0) >= 60_000 ? `, bell stopped ${format.duration(timer.lateMs ?? 0)} late` : ''
  const early = (timer.lateMs ?? 0) < 0 ? `, ended ${format.duration(-(timer.lateMs ?? 0))} early` : ''
  return `${planned}${early || late}`
}

const hoursOrMinutes = (ms: number): string =>
  ms >= 2 * 3_600_000 ? `${Math.round(ms / 360_000) / 10} h` : `${Math.round(ms / 6000) / 10} min`

function speedWords({ toolRpm, toolMm }: StepRow, format: Format): string {
  if (toolRpm === undefined) return ''
  const tip =
    toolMm === undefined ? '' : `, ${format.number(toolMm)} mm: tip ${format.number(tipSpeed(toolRpm, toolMm), 1)} m/s`
  return `${figure(toolRpm, format)} rpm${tip}`
}

/** From the first reading of the adjustment to the last. */
function adjustWords(row: StepRow, record: BatchRecord, format: Format): string {
  const values = record.results.inProcess
    .filter((result) => !result.struck && result.body.step === row.planned.id)
    .flatMap((result) => result.body.value ?? [])
  const [first] = values
  const last = values.at(-1)
  if (first === undefined || last === undefined) return ''
  return values.length === 1 ? figure(first, format) : `${figure(first, format)} → ${figure(last, format)}`
}
