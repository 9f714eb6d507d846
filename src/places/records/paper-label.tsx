import { type LabelDraft, labelText } from '../../batch/label-draft'
import type { PaperProps } from './paper-props'

/** What a label of this batch would say, as it was made. A draft: the responsible person decides. */
export function PaperLabel({ record, format, label }: PaperProps & { label: LabelDraft | null }) {
  if (label === null || label.above.length === 0) return null
  const { header, mass, closed } = record
  const fills = mass.fills.filter(({ struck }) => !struck)
  const units = fills.reduce((sum, fill) => sum + fill.units, 0)
  const filledAtMs = fills.at(-1)?.atMs
  const eachUg = units === 0 ? 0 : mass.reconciliation.filledUg / units
  return (
    <section class="paper-section paper-whole">
      <h2>Label specimen</h2>
      <div class="paper-label">
        <p class="paper-strong">{header.formulaName}</p>
        <p>
          Batch {header.code}
          {units > 0 && `, ${units} ${units === 1 ? 'unit' : 'units'} of ${format.massWithUnit(Math.round(eachUg))}`}
          {filledAtMs !== undefined && `, filled ${format.date(filledAtMs)}`}
        </p>
        <p>Ingredients: {labelText(label)}.</p>
      </div>
      <p class="paper-quiet">
        A draft in INCI order, {closed ? 'as it was made' : 'as it stands so far'}.
        {label.unnamedMaterials.length > 0 && ` Without an INCI name: ${label.unnamedMaterials.join(', ')}.`} The
        responsible person decides what a label says.
      </p>
    </section>
  )
}
