import type { Format } from '../../app/format'
import type { ComparedRow, GoesWith } from '../../batch/compare-batches'
import { Card } from '../../parts/card'
import { Notice } from '../../parts/notice'
import { chanceOf } from '../../trade/rank-correlation'

interface ListProps {
  about: ComparedRow
  answers: readonly GoesWith[]
  batches: number
  format: Format
}

/** So many are shown; what comes after them is noise for sure. */
const shown = 10

/** Which differences go with the one asked about, as rank correlations, and how little a few batches tell. */
export function GoesWithList({ about, answers, batches, format }: ListProps) {
  return (
    <Card label="What goes with it" class="formula-card-flat">
      <h2>What goes with {lower(about.label)}?</h2>
      <Notice kind="caution" title={warningOf(batches, answers.length, format)} />
      {answers.length === 0 ? (
        <p>Nothing to tell: at least four batches are needed, and something that differs between them.</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: on a phone it is scrolled, with the keyboard too
        <section class="batches-scroll" aria-label="What goes with it, by size" tabIndex={0}>
          <table class="batches-table">
            <thead>
              <tr>
                <th scope="col">Measure</th>
                <th scope="col">Which way</th>
                <th scope="col" class="batches-number">
                  Rank correlation
                </th>
                <th scope="col" class="batches-number">
                  n
                </th>
              </tr>
            </thead>
            <tbody>
              {answers.slice(0, shown).map(({ row, rho, n, isChance }) => (
                <tr key={row.id}>
                  <th scope="row">{row.label}</th>
                  <td>
                    {wayOf(rho)}
                    <span class="batches-sub">{isChance ? 'no more than chance does' : 'rarely by chance alone'}</span>
                  </td>
                  <td class="batches-number">{signed(rho, format)}</td>
                  <td class="batches-number">{n}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </Card>
  )
}

/** What n batches can tell, and what looking at many measures does to it. */
function warningOf(n: number, looked: number, format: Format): string {
  const chance = chanceOf(n)
  const few =
    chance === null
      ? `${n} batches are too few: any order of so few comes about by chance.`
      : `With ${n} batches, two things that have nothing to do with each other reach ${format.number(chance, 2)} in one of twenty cases.`
  const many = looked > 5 ? ` ${looked} measures were looked at, so that one or more of these is chance.` : ''
  return `${few}${many} What goes together need not be the cause: try it in a batch.`
}

const wayOf = (rho: number): string => (rho > 0 ? 'the more, the more' : 'the more, the less')

const signed = (rho: number, format: Format): string => `${rho < 0 ? '−' : '+'}${format.number(Math.abs(rho), 2)}`

const lower = (label: string): string =>
  /^[A-Z][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label
