import type { Format } from '../../app/format'
import { commonStep } from '../../batch/entry-phrases'
import type { MaterialRow, UnplannedRow, WeighingRow } from '../../batch/record-materials'
import { Mark } from '../../parts/mark'
import { PaperLimits } from './paper-limits'
import type { PaperProps } from './paper-props'

/** Every line: lot, target with what it was, actual, verdict, share of the product, where, when, who. */
export function PaperMaterials({ record, format }: PaperProps) {
  const { addedUg } = record.mass.reconciliation
  const hasMore = record.materials.some((row) => row.more.length > 0)
  return (
    <section class="paper-section" id="materials">
      <h2>Materials</h2>
      <table class="paper-table paper-materials">
        <thead>
          <tr>
            <th scope="col">
              <span class="visually-hidden">Phase</span>
            </th>
            <th scope="col">Line</th>
            <th scope="col">Lot</th>
            <th scope="col" class="paper-number">
              Target g
            </th>
            <th scope="col" class="paper-number">
              Actual g
            </th>
            <th scope="col">
              <span class="visually-hidden">Verdict</span>
            </th>
            <th scope="col" class="paper-number">
              {record.stage === 'in-hand' || record.stage === 'parked' ? '% so far' : '% as made'}
            </th>
            <th scope="col">Vessel</th>
            <th scope="col" class="paper-time">
              {record.opened ? format.date(record.opened.atMs).replace(/,? \d{4}$/, '') : 'Time'}
            </th>
            <th scope="col" class="paper-by">
              By, checked
            </th>
          </tr>
        </thead>
        <tbody>
          {record.materials.map((row) => (
            <Line key={row.step} row={row} format={format} />
          ))}
          {record.unplanned.map((row) => (
            <Unplanned key={row.entry} row={row} format={format} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td />
            <th scope="row" colSpan={3}>
              Put in{hasMore ? ', with rinses and make-up' : ''}
            </th>
            <td class="paper-number paper-strong">{format.mass(addedUg, commonStep(addedUg))}</td>
            <td />
            <td class="paper-number paper-strong">{addedUg > 0 ? '100.00' : ''}</td>
            <td colSpan={3} />
          </tr>
        </tfoot>
      </table>
      <PaperLimits record={record} format={format} />
    </section>
  )
}

function Line({ row, format }: { row: MaterialRow; format: Format }) {
  const counted = row.weighings.filter((weighing) => weighing.counts)
  const last = counted.at(-1)
  const mass = (massUg: number): string => format.mass(massUg, row.stepUg)
  return (
    <tr id={`step-${row.step}`}>
      <td class="paper-phase">{row.toCheck ? '' : row.phase}</td>
      <td class="paper-line">
        {row.name}
        <LineNotes row={row} counted={counted} format={format} />
      </td>
      <td class="paper-lot">{row.lots.join(', ')}</td>
      <td class="paper-number paper-target">
        {row.toCheck ? toLimits(row.toCheck, format) : row.targetUg === undefined ? '' : mass(row.targetUg)}
        <TargetWas row={row} mass={mass} />
      </td>
      <td class="paper-number paper-strong">{last || row.actualUg > 0 ? mass(row.actualUg) : ''}</td>
      <td class="paper-mark">
        <Verdict verdict={row.verdict} />
      </td>
      <td class="paper-number">{row.asMade === undefined ? '' : format.number(row.asMade * 100, 2)}</td>
      <td class="paper-vessel">{last?.vessel ?? ''}</td>
      <td class="paper-time">{last ? format.time(last.atMs) : ''}</td>
      <td class="paper-by">
        {last?.by} <span class="paper-quiet">{last?.checkedBy}</span>
      </td>
    </tr>
  )
}

/** What a target was before it was changed. */
export const TargetWas = ({ row, mass }: { row: MaterialRow; mass: (massUg: number) => string }) =>
  row.targetWas.map((was, index) => (
    <span key={index} class="paper-was">
      {' '}
      was {mass(was)}
    </span>
  ))

/** Under a line's name: what was struck out and why, parts, rinses and make-up, where it went over. */
export function LineNotes({
  row,
  counted,
  format,
}: {
  row: MaterialRow
  counted: readonly WeighingRow[]
  format: Format
}) {
  const mass = (massUg: number): string => format.mass(massUg, row.stepUg)
  const others = row.weighings.filter((weighing) => !weighing.counts)
  return (
    <span class="paper-small">
      {others.map((weighing) =>
        weighing.struck ? (
          <span key={weighing.entry} id={`entry-${weighing.entry}`}>
            {' '}
            <s>{mass(weighing.netUg)}</s> struck {format.time(weighing.struck.atMs)} {weighing.struck.by},{' '}
            {weighing.struck.reason}.
          </span>
        ) : (
          <span key={weighing.entry}>
            {' '}
            {mass(weighing.netUg)} at {format.time(weighing.atMs)} went with its vessel.
          </span>
        ),
      )}
      {row.toCheck && counted.length > 0 && ` ${counted.length} ${counted.length === 1 ? 'addition' : 'additions'}.`}
      {!row.toCheck && counted.length > 1 && ` ${counted.map((weighing) => mass(weighing.netUg)).join(' + ')}.`}
      {row.more.map((more) => (
        <span key={more.entry}>
          {' '}
          + {format.mass(more.massUg)} {more.what} at {format.time(more.atMs)}.
        </span>
      ))}
      {counted.map(({ entry, lot, lotWas }) =>
        lotWas === undefined ? null : (
          <span key={entry}>
            {' '}
            Lot {lot}, written down as {lotWas}.
          </span>
        ),
      )}
      {row.verdict === 'over' && row.deviation && ' OVER, see deviations.'}
      {row.verdict === 'part' && ' Part weighed.'}
    </span>
  )
}

function Unplanned({ row, format }: { row: UnplannedRow; format: Format }) {
  const net = format.mass(row.netUg, commonStep(row.netUg))
  return (
    <tr id={`entry-${row.entry}`}>
      <td class="paper-phase">+</td>
      <td class="paper-line">
        {row.name}
        <span class="paper-small">
          {' '}
          Not in the plan: {row.reason}.
          {row.struck && ` Struck ${format.time(row.struck.atMs)} ${row.struck.by}, ${row.struck.reason}.`}
        </span>
      </td>
      <td class="paper-lot">{row.lot ?? ''}</td>
      <td class="paper-number paper-target">none</td>
      <td class="paper-number paper-strong">{row.struck ? <s>{net}</s> : net}</td>
      <td class="paper-mark" />
      <td class="paper-number">{row.asMade === undefined ? '' : format.number(row.asMade * 100, 2)}</td>
      <td class="paper-vessel">{row.vessel}</td>
      <td class="paper-time">{format.time(row.atMs)}</td>
      <td class="paper-by">{row.by}</td>
    </tr>
  )
}

export function Verdict({ verdict }: { verdict: MaterialRow['verdict'] }) {
  if (verdict === 'none') return null
  const kind = verdict === 'within' ? 'within' : verdict === 'part' ? 'part' : 'over'
  return (
    <>
      <Mark kind={kind} size={16} />
      <span class="visually-hidden">{verdict}</span>
    </>
  )
}

function toLimits({ label, limits }: NonNullable<MaterialRow['toCheck']>, format: Format): string {
  const { min, max } = limits ?? {}
  if (min === undefined || max === undefined) return `to ${label}`
  return `to ${label} ${format.number(min)}–${format.number(max)}`
}
