import type { Format } from '../../app/format'
import type { MaterialRow } from '../../batch/record-materials'
import type { ReworkRecord } from '../../batch/record-rework'
import { LineNotes, TargetWas, Verdict } from './paper-materials'
import type { PaperProps } from './paper-props'
import { StepTable } from './paper-steps'

/** Each rework under a heading of its own: why, what went back, what was added, and its steps. */
export function PaperReworks(paper: PaperProps) {
  return (
    <>
      {paper.record.reworks.map((rework) => (
        <Rework key={rework.entry} rework={rework} {...paper} />
      ))}
      <Decisions {...paper} />
    </>
  )
}

function Rework({ rework, ...paper }: PaperProps & { rework: ReworkRecord }) {
  const { format } = paper
  const { part, reason, returned, materials, steps } = rework
  const weighed = materials.filter(({ toCheck }) => toCheck === undefined)
  return (
    <section class="paper-section">
      <h2>Rework {part}</h2>
      <p>
        Opened again {format.dateTime(rework.atMs)} {rework.by}: {reason}.
        {returned && ` ${format.massWithUnit(returned.massUg)} emptied back into ${returned.vessel.toLowerCase()}.`}
      </p>
      {weighed.length > 0 && (
        <table class="paper-table">
          <thead>
            <tr>
              <th scope="col">Added</th>
              <th scope="col" class="paper-number">
                Asked for
              </th>
              <th scope="col" class="paper-number">
                Weighed
              </th>
            </tr>
          </thead>
          <tbody>
            {weighed.map((row) => (
              <Added key={row.step} row={row} format={format} />
            ))}
          </tbody>
        </table>
      )}
      <StepTable rows={steps} {...paper} />
    </section>
  )
}

function Added({ row, format }: { row: MaterialRow; format: Format }) {
  const mass = (massUg: number): string => format.massWithUnit(massUg, row.stepUg)
  const counted = row.weighings.filter(({ counts }) => counts)
  const last = counted.at(-1)
  const said = [
    row.lots.length === 0 ? '' : `lot ${row.lots.join(', ')}`,
    last === undefined ? '' : `${format.time(last.atMs)} ${last.by}`,
    last?.checkedBy === undefined ? '' : `checked ${last.checkedBy}`,
  ].filter((part) => part !== '')
  const sentence = said.length === 0 ? '' : `${said.join(', ')}.`
  return (
    <tr id={`step-${row.step}`}>
      <td>
        {row.name} <span class="paper-small">{sentence}</span>
        <LineNotes row={row} counted={counted} format={format} />
      </td>
      <td class="paper-number">
        {row.targetUg === undefined ? '' : mass(row.targetUg)}
        <TargetWas row={row} mass={mass} />
      </td>
      <td class="paper-number paper-strong">
        {last === undefined ? '' : mass(row.actualUg)} <Verdict verdict={row.verdict} />
      </td>
    </tr>
  )
}

/** The last decision stands among the signatures; here is how it came to it. */
function Decisions({ record, format }: PaperProps) {
  if (record.decisions.length < 2 && record.reworks.length === 0) return null
  return (
    <section class="paper-section">
      <h2>Decisions</h2>
      <table class="paper-table">
        <thead class="visually-hidden">
          <tr>
            <th scope="col">When</th>
            <th scope="col">Decision</th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          {record.decisions.map((row) => (
            <tr key={row.entry}>
              <td class="paper-time">
                {format.dateTime(row.atMs)} {row.by}
              </td>
              <td class="paper-strong">{row.decision}</td>
              <td>{row.note ?? ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
