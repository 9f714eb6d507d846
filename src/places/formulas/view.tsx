import { useApp } from '../../app/app'
import { FormulaPage } from './formula-page'
import { FormulasList } from './formulas-list'

/** The formulas of the house, and each of them to read or to change. */
export function FormulasPlace() {
  const at = useApp().route.value
  const formula = at.place === 'formulas' ? at.formula : undefined
  return formula === undefined ? <FormulasList /> : <FormulaPage key={formula} id={formula} />
}
