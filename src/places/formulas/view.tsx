import { useApp } from '../../app/app'
import { latePart } from '../../app/late-part'
import { FormulaPage } from './formula-page'
import { FormulasList, spreadsheetAddress } from './formulas-list'

const SpreadsheetImport = latePart(async () => (await import('./spreadsheet-import')).SpreadsheetImport)

/** The formulas of the house, and each of them to read or to change. */
export function FormulasPlace() {
  const at = useApp().route.value
  const formula = at.place === 'formulas' ? at.formula : undefined
  if (formula === spreadsheetAddress) return <SpreadsheetImport />
  return formula === undefined ? <FormulasList /> : <FormulaPage key={formula} id={formula} />
}
