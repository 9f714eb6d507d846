import { useApp } from '../../app/app'
import { latePart } from '../../app/late-part'
import { sideBySideOf } from '../../app/side-by-side'
import { AsMadePage } from './as-made-page'
import { FormulaPage } from './formula-page'
import { FormulasList, spreadsheetAddress } from './formulas-list'

const BatchesPage = latePart(() => import('./batches-page'), 'BatchesPage')
const SpreadsheetImport = latePart(() => import('./spreadsheet-import'), 'SpreadsheetImport')

/** The formulas of the house, and each of them to read or to change. */
export function FormulasPlace() {
  const at = useApp().route.value
  const formula = at.place === 'formulas' ? at.formula : undefined
  if (formula === spreadsheetAddress) return <SpreadsheetImport />
  const batch = at.place === 'formulas' ? at.batch : undefined
  if (formula === undefined) return <FormulasList />
  const others = batch === undefined ? null : sideBySideOf(batch)
  if (others !== null) return <BatchesPage key={batch} formula={formula} asked={others.asked} />
  if (batch !== undefined) return <AsMadePage key={batch} formula={formula} batch={batch} />
  return <FormulaPage key={formula} id={formula} />
}
