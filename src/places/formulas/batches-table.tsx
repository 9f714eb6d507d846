import type { Format } from '../../app/format'
import { addressOf } from '../../app/routes'
import type { ComparedBatch, ComparedCell, ComparedRow } from '../../batch/compare-batches'
import { limitsOff, rowFigure } from './batches-figures'

interface TableProps {
  rows: readonly ComparedRow[]
  batches: readonly ComparedBatch[]
  formula: string
  format: Format
}

/** A row a measure, a column a batch; under each code the ways on from it. */
export function BatchesTable({ rows, batches, formula, format }: TableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: twelve columns are scrolled, with the keyboard too
    <section class="batches-scroll" aria-label="What differs, batch by batch" tabIndex={0}>
      <table class="batches-table">
        <caption>
          Under each figure how far it is from what was asked for, in units of its tolerance: a share's own, a tenth of
          a time, a degree, half of what a speed may be; of checks the size is in halves of their window.
        </caption>
        <thead>
          <tr>
            <th scope="col">Measure</th>
            <th scope="col" class="batches-number">
              From least to most
            </th>
            {batches.map(({ id, code, revision }) => (
              <th key={id} scope="col" class="batches-number">
                <a href={addressOf({ place: 'records', batch: id })}>{code}</a>
                <span class="batches-sub">r{revision}</span>
                <a
                  class="batches-on"
                  href={addressOf({ place: 'formulas', formula, batch: id })}
                  aria-label={`New revision from ${code}`}
                >
                  new revision
                </a>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">
                {row.label}
                <span class="batches-sub">{kindWords[row.kind]}</span>
              </th>
              <td class="batches-number">
                <strong>{format.number(row.spread, 1)}</strong>
              </td>
              {row.cells.map((cell, at) => (
                <td key={batches[at]?.id ?? at} class="batches-number">
                  {cell === null ? '–' : <Cell row={row} cell={cell} format={format} />}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function Cell({ row, cell, format }: { row: ComparedRow; cell: ComparedCell; format: Format }) {
  const off = cell.off === undefined || Math.abs(cell.off) < 0.05 ? '' : signed(cell.off, format)
  const isFar = (cell.off !== undefined && Math.abs(cell.off) > 1) || limitsOff(row, cell.value)
  return (
    <span class={isFar ? 'batches-far' : undefined}>
      {rowFigure(row, cell.value, format)}
      {off !== '' && <span class="batches-sub">{off}</span>}
    </span>
  )
}

/** As finely as it takes to see on which side of one tolerance it stands. */
function signed(value: number, format: Format): string {
  const size = Math.abs(value)
  return `${value < 0 ? '−' : '+'}${format.number(size, Math.abs(size - 1) < 0.05 ? 2 : 1)}`
}

const kindWords: Readonly<Record<ComparedRow['kind'], string>> = {
  share: 'share as made',
  process: 'process',
  check: 'check',
}
