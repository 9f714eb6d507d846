import './sheets.css'
import { useApp } from '../../app/app'
import { currencyText } from '../../app/currency'
import { useFormat } from '../../app/format'
import { Caution } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'
import { costOf } from './costs'
import { stockAfter } from './lots'
import { wearOf } from './ready'
import type { StartProps } from './shared'

interface StockSheetProps extends StartProps {
  onClose: () => void
}

/** What to wear, what to beware of, what each lot will have left, and what it costs. */
export const StockSheet = ({ setUp, onClose }: StockSheetProps) => {
  const format = useFormat()
  const { currency } = useApp().settings.value.value
  const wear = wearOf(setUp)
  const cost = costOf(setUp)
  const hazardous = setUp.header.materials.filter(({ hazards }) => hazards)
  const lines = setUp.plan.ok ? [...setUp.plan.value.lines.values()] : []
  const after = stockAfter(lines, setUp.shelves)
  return (
    <Sheet title="Stock, cost, hazards" wide onClose={onClose}>
      {wear.length > 0 && <Caution icon="glasses" text={`Wear: ${wear.join(', ')}`} />}
      {hazardous.map(({ id, name, hazards }) => (
        <p key={id} class="start-hazard">
          <strong>{name}.</strong> {hazards?.caution.replace(/\.$/, '')}.
          {hazards && hazards.statements.length > 0 && (
            <span class="start-quiet"> {hazards.statements.join('. ')}</span>
          )}
        </p>
      ))}
      <p>{cost === null ? 'No prices are known.' : `Materials: ${currencyText(cost, currency, format)}.`}</p>
      <table class="start-stock">
        <caption>What is left when the batch is weighed</caption>
        <thead>
          <tr>
            <th scope="col">Material</th>
            <th scope="col">lot</th>
            <th scope="col">now</th>
            <th scope="col">after</th>
          </tr>
        </thead>
        <tbody>
          {after.map(({ material, lot, leftUg, afterUg }) => (
            <tr key={lot.id}>
              <th scope="row">{material}</th>
              <td>{lot.code}</td>
              <td>{format.massWithUnit(leftUg)}</td>
              <td>{format.massWithUnit(afterUg)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Sheet>
  )
}
