import './start.css'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { EmptyState } from '../../parts/empty'
import { ChecksSheet } from './checks-sheet'
import { LinesSheet } from './lines-sheet'
import { createStartModel } from './model'
import { OpenBar } from './open-bar'
import { PeopleSheet } from './people-sheet'
import { FormulaPicker } from './picker'
import { SettlePanel } from './settle-panel'
import type { StartSheet } from './shared'
import { SizePanel } from './size-panel'
import { StockSheet } from './stock-sheet'
import { Strip } from './strip'
import { TargetTable } from './target-table'
import { VesselsSheet } from './vessels-sheet'

/** A batch before it is opened: which formula, how much, in what, of which lots, and what to settle first. */
export function StartPlace() {
  const route = useApp().route.value
  const formula = route.place === 'start' ? route.formula : undefined
  return formula === undefined ? <FormulaPicker /> : <SettingUp key={formula} formula={formula} />
}

const SettingUp = ({ formula }: { formula: string }) => {
  const app = useApp()
  const model = useMemo(() => createStartModel(app, formula), [app, formula])
  const [sheet, setSheet] = useState<StartSheet | null>(null)
  useEffect(() => model.dispose, [model])
  if (!model.ready.value) return <main class="start" aria-busy="true" />
  const [house, setUp] = [model.house.value, model.setUp.value]
  if (!house || !setUp) return <NoSetUp known={house !== null} people={(house?.people.length ?? 0) > 0} />
  const close = () => setSheet(null)
  const shared = { model, house, setUp }
  return (
    <main class="start">
      <Strip {...shared} onPeople={() => setSheet('people')} />
      <SizePanel {...shared} onSheet={setSheet} />
      <TargetTable {...shared} />
      <SettlePanel {...shared} onSheet={setSheet} />
      <OpenBar model={model} />
      {sheet === 'vessels' && <VesselsSheet {...shared} onClose={close} />}
      {sheet === 'lines' && <LinesSheet {...shared} onClose={close} />}
      {sheet === 'people' && <PeopleSheet {...shared} onClose={close} />}
      {sheet === 'checks' && <ChecksSheet {...shared} onClose={close} />}
      {sheet === 'stock' && <StockSheet {...shared} onClose={close} />}
    </main>
  )
}

const NoSetUp = ({ known, people }: { known: boolean; people: boolean }) => (
  <main class="start-none">
    <EmptyState
      title={
        known ? (people ? 'This formula has no revision' : 'Nobody is known here yet') : 'This formula is not here'
      }
      text={
        known
          ? people
            ? 'Write one first: phases, lines and steps.'
            : 'Add yourself in Setup, so that the record can say who weighed.'
          : 'It may have been made on another tablet. Import it, or choose another one.'
      }
      actions={
        <>
          {known && !people && (
            <Button kind="filled" label="Go to Setup" href={addressOf({ place: 'setup', section: 'people' })} />
          )}
          {known && people && <Button kind="filled" label="Go to Formulas" href={addressOf({ place: 'formulas' })} />}
          <Button label="Choose another formula" href={addressOf({ place: 'start' })} />
          <Button kind="plain" icon="arrow-left" label="Bench" href={addressOf({ place: 'bench' })} />
        </>
      }
    />
  </main>
)
