import type { ReworkRecord } from '../../batch/record-rework'
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
  const { part, reason, returned, additions, steps } = rework
  return (
    <section class="paper-section">
      <h2>Rework {part}</h2>
      <p>
        Opened again {format.dateTime(rework.atMs)} {rework.by}: {reason}.
        {returned && ` ${format.massWithUnit(returned.massUg)} emptied back into ${returned.vessel.toLowerCase()}.`}
      </p>
      {additions.length > 0 && (
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
            {additions.map((row) => (
              <tr key={row.entry} class={row.struck ? 'paper-struck-row' : undefined}>
                <td>
                  {row.struck ? <s>{row.name}</s> : row.name}
                  <span class="paper-small">
                    {' '}
                    {[row.lot === undefined ? '' : `lot ${row.lot}`, `${format.time(row.atMs)} ${row.by}`]
                      .filter((part) => part !== '')
                      .join(', ')}
                  </span>
                </td>
                <td class="paper-number">{row.targetUg === undefined ? '' : format.massWithUnit(row.targetUg)}</td>
                <td class="paper-number paper-strong">{format.massWithUnit(row.netUg)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <StepTable rows={steps} {...paper} />
    </section>
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
