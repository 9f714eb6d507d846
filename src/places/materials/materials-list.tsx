import './materials.css'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { BringIn } from '../../app/import/archive-import'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { EmptyState } from '../../parts/empty'
import { TextField } from '../../parts/form'
import { Icon } from '../../parts/icon'
import { Pill } from '../../parts/pill'
import { PillButton } from '../../parts/pill-button'
import { MaterialsFiles } from './materials-files'
import { createMaterialsModel, type MaterialsModel, newMaterial, type Shown } from './model'
import type { MaterialRow } from './stock'

export function MaterialsList() {
  const app = useApp()
  const model = useMemo(() => createMaterialsModel(app), [app])
  useEffect(() => void model.readOnHand(), [model, app.catalogue.lots.value])
  const rows = model.materials.value
  const [most, setMost] = useState(mostRows)
  const isEmpty = app.catalogue.materials.value.size === 0
  const begin = () => app.go({ place: 'materials', material: newMaterial(app.ids.next()) })
  return (
    <main class="materials">
      <div class="materials-main">
        <header class="materials-head">
          <h1>Materials</h1>
          <div class="materials-search">
            <TextField
              label="Find by name, INCI, use, lot or supplier"
              value={model.search.value}
              onChange={model.setSearch}
            />
          </div>
        </header>
        <ShowChoice model={model} />
        {rows.length > 0 && (
          <ul class="materials-rows" aria-label="Materials">
            {rows.slice(0, most).map((row) => (
              <li key={row.material.id}>
                <MaterialLine row={row} />
              </li>
            ))}
          </ul>
        )}
        {rows.length > most && (
          <Button label={`Show ${rows.length - most} more`} onPress={() => setMost(rows.length)} />
        )}
        {rows.length === 0 && !isEmpty && <p class="materials-hint">No material of that kind or name.</p>}
        {isEmpty && (
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
        <MaterialsFiles />
      </aside>
    </main>
  )
}

function ShowChoice({ model }: { model: MaterialsModel }) {
  const counts = model.counts.value
  return (
    <div class="materials-show">
      {shown
        .filter(({ show }) => show === 'all' || counts[show] > 0)
        .map(({ show, label }) => (
          <PillButton
            key={show}
            text={`${label} ${counts[show]}`}
            selected={model.show.value === show}
            onPress={() => model.setShow(show)}
          />
        ))}
    </div>
  )
}

const shown: readonly { readonly show: Shown; readonly label: string }[] = [
  { show: 'all', label: 'In use' },
  { show: 'order', label: 'To order' },
  { show: 'look', label: 'Lots to look at' },
  { show: 'archived', label: 'Put away' },
]

/** So many are drawn at once; typing finds the others. */
const mostRows = 120

function MaterialLine({ row }: { row: MaterialRow }) {
  const format = useFormat()
  const { material, lots, onHandUg, expired, waiting, reorder } = row
  return (
    <a class="material-row" href={addressOf({ place: 'materials', material: material.id })}>
      <span class="material-row-words">
        <span class="material-row-name">{material.name}</span>
        <span class="material-row-sub">{material.inci.map(({ name }) => name).join(', ') || material.function}</span>
      </span>
      <span class="material-row-marks">
        {material.draft && <Pill icon="pencil" text="to be filled in" />}
        {material.hazards && (
          <Pill
            tone="caution"
            icon="triangle-alert"
            text={material.hazards.kind === 'other' ? 'caution' : material.hazards.kind}
          />
        )}
        {reorder && <Pill tone="caution" icon="package" text="to order" />}
        {waiting > 0 && (
          <Pill tone="caution" icon="lock" text={waiting === 1 ? '1 lot waits' : `${waiting} lots wait`} />
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
