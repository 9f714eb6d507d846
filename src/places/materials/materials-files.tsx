import '../../app/import/archive-import.css'
import { useId, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { createHandOver } from '../../app/import/hand-over'
import { materialsFile } from '../../app/import/write-documents'
import { Button } from '../../parts/button'
import { Icon } from '../../parts/icon'
import { Notice } from '../../parts/notice'
import { createMaterialsTable, type MaterialsTable, materialsCsv } from './materials-table'

/** The list of materials leaves as a table or a file; a table that was changed elsewhere comes in again. */
export function MaterialsFiles() {
  const app = useApp()
  const files = useMemo(() => createHandOver(app), [app])
  const table = useMemo(() => createMaterialsTable(app), [app])
  const id = useId()
  const materials = [...app.catalogue.materials.value.values()]
  const said = files.said.value
  const csv = () => materialsCsv(materials, app.settings.decimalMark.value)
  if (materials.length === 0) return null
  return (
    <div class="bring">
      <label class="bring-choose" for={id}>
        <Icon name="upload" />
        <span>{table.state.value.step === 'busy' ? 'Reading…' : 'Bring in a table'}</span>
        <input
          id={id}
          type="file"
          accept=".csv,text/csv"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0]
            // Emptied, so that the same file can be chosen again after it was mended.
            event.currentTarget.value = ''
            if (file) void table.take(file)
          }}
        />
      </label>
      <div aria-live="polite">
        <TableAnswer table={table} />
      </div>
      <Button
        icon="file-text"
        label="Save the list as a table"
        sub="for a spreadsheet, and back"
        onPress={() => void files.hand('materials.csv', 'text/csv', csv())}
        full
      />
      <Button
        icon="download"
        label="Save the list as a file"
        sub="all of it, for another tablet"
        onPress={() => void files.hand('materials.json', 'application/json', materialsFile(materials))}
        full
      />
      {said && <Notice kind={said.good ? 'good' : 'over'} title={said.text} live />}
    </div>
  )
}

function TableAnswer({ table }: { table: MaterialsTable }) {
  const state = table.state.value
  switch (state.step) {
    case 'idle':
    case 'busy':
      return null
    case 'preview':
      return (
        <Notice title={`${state.fresh} new, ${state.changed} changed, ${state.same} the same.`}>
          <div class="bring-buttons">
            <Button
              kind="filled"
              label="Bring them in"
              disabled={state.fresh + state.changed === 0}
              onPress={() => void table.apply()}
            />
            <Button label="Leave it" onPress={table.leave} />
          </div>
        </Notice>
      )
    case 'done':
    case 'refused':
      return (
        <Notice kind={state.step === 'done' ? 'good' : 'over'} title={state.text}>
          <Button kind="plain" label={state.step === 'done' ? 'Good' : 'Leave it'} onPress={table.leave} />
        </Notice>
      )
  }
}
