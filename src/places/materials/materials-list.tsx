import './materials.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { BringIn } from '../../app/import/archive-import'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { EmptyState } from '../../parts/empty'
import { TextField } from '../../parts/form'
import { Icon } from '../../parts/icon'
import { Pill } from '../../parts/pill'
import { createMaterialsModel, type MaterialRow } from './model'

export function MaterialsList() {
  const app = useApp()
  const model = useMemo(() => createMaterialsModel(app), [app])
  useEffect(() => void model.readOnHand(), [model, app.catalogue.lots.value])
  const rows = model.materials.value
  const begin = () => app.go({ place: 'materials', material: app.ids.next() })
  return (
    <main class="materials">
      <div class="materials-main">
        <header class="materials-head">
          <h1>Materials</h1>
          <div class="materials-search">
            <TextField
              label="Find by name, INCI or what it does"
              value={model.search.value}
              onChange={model.setSearch}
            />
          </div>
        </header>
        {rows.length > 0 && (
          <ul class="materials-rows" aria-label="Materials">
            {rows.map((row) => (
              <li key={row.material.id}>
                <MaterialLine row={row} />
              </li>
            ))}
          </ul>
        )}
        {rows.length === 0 && model.search.value !== '' && <p class="materials-hint">No material of that name.</p>}
        {rows.length === 0 && model.search.value === '' && (
          <EmptyState
            title="No material yet"
            text="A material is what a formula's lines are made of: its name, what is in it, how much of it may be used, and what to wear. Its lots say what stands on the shelf."
            actions={<Button kind="filled" icon="plus" label="Add the first one" onPress={begin} />}
          />
        )}
      </div>
      <aside class="materials-side" aria-label="More materials">
        <Button kind="outline" size="primary" icon="plus" label="New material" onPress={begin} full />
        <BringIn />
        <p class="materials-hint">A file of formulas and materials (JSON), or one that Pannikin saved.</p>
      </aside>
    </main>
  )
}

function MaterialLine({ row }: { row: MaterialRow }) {
  const format = useFormat()
  const { material, lots, onHandUg, expired } = row
  return (
    <a class="material-row" href={addressOf({ place: 'materials', material: material.id })}>
      <span class="material-row-words">
        <span class="material-row-name">{material.name}</span>
        <span class="material-row-sub">{material.inci.map(({ name }) => name).join(', ') || material.function}</span>
      </span>
      <span class="material-row-marks">
        {material.hazards && (
          <Pill
            tone="caution"
            icon="triangle-alert"
            text={material.hazards.kind === 'other' ? 'caution' : material.hazards.kind}
          />
        )}
        {expired > 0 && (
          <Pill tone="over" icon="calendar-clock" text={expired === 1 ? '1 lot expired' : `${expired} lots expired`} />
        )}
      </span>
      <span class="material-row-stock">
        {lots === 0 ? 'no lot' : format.massWithUnit(onHandUg)}
        {lots > 1 && <span class="material-row-sub">{lots} lots</span>}
      </span>
      <Icon name="chevron-right" />
    </a>
  )
}
