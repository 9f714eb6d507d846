import type { LotRow } from '../../batch/record-lots'
import type { PaperProps } from './paper-props'

/** Every lot that mass was taken from, with what its papers say. */
export function PaperLots({ record, format }: PaperProps) {
  if (record.lots.length === 0) return null
  return (
    <section class="paper-section">
      <h2>Lots used</h2>
      <table class="paper-table paper-lots">
        <thead>
          <tr>
            <th scope="col">Lot</th>
            <th scope="col">Material</th>
            <th scope="col">Supplier</th>
            <th scope="col">Good until</th>
            <th scope="col" class="paper-number">
              Assay
            </th>
            <th scope="col" class="paper-number">
              Taken g
            </th>
          </tr>
        </thead>
        <tbody>
          {record.lots.map((lot) => (
            <tr key={lot.id} id={`lot-${lot.id}`}>
              <td>{lot.code}</td>
              <td>{lot.material}</td>
              <td>{lot.supplier ?? ''}</td>
              <td>
                {untilWords(lot, format)}
                {lot.status === 'quarantine' && <strong class="paper-outside"> in quarantine</strong>}
              </td>
              <td class="paper-number">{lot.assay === undefined ? '' : format.percent(lot.assay, 1)}</td>
              <td class="paper-number">{format.mass(lot.usedUg, 1000)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function untilWords({ expires, retestOn }: LotRow, format: PaperProps['format']): string {
  const parts = [
    expires === undefined ? '' : format.date(expires),
    retestOn === undefined ? '' : `test again ${format.date(retestOn)}`,
  ]
  return parts.filter((part) => part !== '').join(', ') || 'not stated'
}
