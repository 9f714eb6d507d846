import { commonStep } from '../../batch/entry-phrases'
import type { PaperProps } from './paper-props'

/** Everything that was put in, and where it is now: the two sides are equal to the microgram. */
export function PaperMass({ record, format }: PaperProps) {
  const { mass, stage } = record
  const { reconciliation: sums, unexplainedUg, unexplainedLimitUg, madeUg, yieldFraction } = mass
  if (sums.addedUg === 0) return null
  const limit = unexplainedLimitUg === null ? '' : `, limit ${format.mass(unexplainedLimitUg)}`
  const rows: readonly (readonly [string, number])[] = [
    ['Filled', sums.filledUg],
    ['Sampled', sums.sampledUg],
    ['Evaporated', sums.evaporatedUg],
    ['Left behind in vessels', sums.leftBehindUg],
    ...(sums.spilledUg > 0 ? [['Spilled', sums.spilledUg] as const] : []),
    ...(sums.discardedUg > 0 ? [['Thrown away', sums.discardedUg] as const] : []),
    [unexplainedUg === null ? 'In the vessels now' : `Unexplained${limit}`, unexplainedUg ?? sums.inVesselsUg],
  ]
  const shown = unexplainedUg === null ? rows.filter(([, massUg]) => massUg > 0) : rows
  const stepUg = commonStep(...rows.map(([, massUg]) => massUg), sums.addedUg)
  const losses = mass.losses.filter((loss) => !loss.struck && loss.what !== 'evaporated')
  return (
    <section class="paper-section">
      <h2>Where it all went</h2>
      <table class="paper-table">
        <thead class="visually-hidden">
          <tr>
            <th scope="col">Where</th>
            <th scope="col">Grams</th>
          </tr>
        </thead>
        <tbody>
          {shown.map(([name, massUg]) => (
            <tr key={name}>
              <td>{name}</td>
              <td class="paper-number paper-strong">{format.mass(massUg, stepUg)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">In all, g, as put in</th>
            <td class="paper-number paper-strong">{format.mass(sums.addedUg, stepUg)}</td>
          </tr>
        </tfoot>
      </table>
      {stage !== 'in-hand' && sums.filledUg > 0 && (
        <p>
          Yield, filled and sampled: <strong>{format.percent(yieldFraction)}</strong> of the{' '}
          {format.massWithUnit(madeUg)} made.
        </p>
      )}
      {losses.map((loss) => (
        <p key={loss.entry} class="paper-quiet">
          {loss.what === 'spilled' ? 'Spilled' : 'Thrown away'} {format.time(loss.atMs)} {loss.by}, {loss.vessel}:{' '}
          {loss.massUg === 'all' ? 'all of it' : format.massWithUnit(loss.massUg, 1000)}, {loss.why}.
        </p>
      ))}
    </section>
  )
}
