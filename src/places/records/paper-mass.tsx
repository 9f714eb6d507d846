import { LossPicture } from '../../app/loss-picture'
import { commonStep } from '../../batch/entry-phrases'
import { Mark } from '../../parts/mark'
import type { PaperProps } from './paper-props'

/** Everything that was put in, and where it is now: the two sides are equal to the microgram. */
export function PaperMass({ record, format }: PaperProps) {
  const { mass, stage } = record
  const { reconciliation: sums, unexplainedUg, unexplainedLimitUg, isFlagged } = mass
  if (sums.addedUg === 0) return null
  const limit = unexplainedLimitUg === null ? '' : `, limit ${format.mass(unexplainedLimitUg)}`
  const rows: readonly (readonly [string, number])[] = [
    ['Filled', sums.filledUg],
    ['Sampled', sums.sampledUg],
    ['Evaporated', sums.evaporatedUg],
    ['Left in vessels', sums.residueUg],
    ...(sums.spilledUg > 0 ? [['Spilled', sums.spilledUg] as const] : []),
    ...(sums.discardedUg > 0 ? [['Thrown away', sums.discardedUg] as const] : []),
    [unexplainedUg === null ? 'In the vessels now' : `Unexplained${limit}`, unexplainedUg ?? sums.inVesselsUg],
  ]
  const shown = unexplainedUg === null ? rows.filter(([, massUg]) => massUg > 0) : rows
  const stepUg = commonStep(...rows.map(([, massUg]) => Math.abs(massUg)), sums.addedUg, sums.theoreticalUg)
  return (
    <section class="paper-section" id="mass">
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
              <td class="paper-number paper-strong">{format.mass(massUg, stepUg).replace('-', '−')}</td>
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
      {isFlagged && unexplainedUg !== null && (
        <p class="paper-outside">
          <Mark kind="over" size={22} /> {format.percent(Math.abs(unexplainedUg) / sums.theoreticalUg)} of the batch is{' '}
          {unexplainedUg > 0 ? 'unexplained' : 'there and not in the books'}: more than the{' '}
          {format.percent((unexplainedLimitUg ?? 0) / sums.theoreticalUg)} that the formula lets pass.
        </p>
      )}
      {stage !== 'in-hand' && sums.filledUg > 0 && (
        <p>
          Yield: <strong>{format.percent(sums.filledUg / sums.theoreticalUg)}</strong> of the theoretical{' '}
          {format.massWithUnit(sums.theoreticalUg)} was filled, <strong>{format.percent(sums.outFraction)}</strong> with
          the samples.
        </p>
      )}
      <LossPicture check={{ sums, isFlagged }} format={format} stepUg={stepUg} />
      <Told record={record} format={format} />
    </section>
  )
}

/** What the sums cannot say: why it was lost, what was read above the books, what the vessel got lighter by. */
function Told({ record: { mass }, format }: Pick<PaperProps, 'record' | 'format'>) {
  const losses = mass.losses.filter((loss) => !loss.struck && loss.what !== 'evaporated')
  const above = mass.makeUps.filter((each) => !each.struck && each.aboveUg !== undefined)
  const fills = mass.fills.filter((each) => !each.struck && each.lighterUg !== undefined)
  return (
    <>
      {losses.map((loss) => (
        <p key={loss.entry} class="paper-quiet">
          {loss.what === 'spilled' ? 'Spilled' : 'Thrown away'} {format.time(loss.atMs)} {loss.by}, {loss.vessel}:{' '}
          {loss.massUg === 'all' ? 'all of it' : format.massWithUnit(loss.massUg, 1000)}, {loss.why}.
        </p>
      ))}
      {above.map((each) => (
        <p key={each.entry} class="paper-outside">
          Made up {format.time(each.atMs)} {each.by} though the vessel read {format.massWithUnit(each.aboveUg ?? 0)}{' '}
          above the books.
        </p>
      ))}
      {fills.map((each) => (
        <p key={each.entry} class="paper-quiet">
          Filled {format.time(each.atMs)} {each.by}: {format.massWithUnit(each.massUg)} in {each.units}{' '}
          {each.units === 1 ? 'unit' : 'units'}; the vessel got {format.massWithUnit(each.lighterUg ?? 0)} lighter.
        </p>
      ))}
    </>
  )
}
