import './formulas.css'
import './spreadsheet.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { SpecFields } from '../../app/forms/spec-fields'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { SpreadsheetColumns } from './spreadsheet-columns'
import { createSpreadsheet, importHeadFields } from './spreadsheet-model'
import { SpreadsheetRows } from './spreadsheet-rows'
import { SpreadsheetSide } from './spreadsheet-side'
import { SpreadsheetStart } from './spreadsheet-start'

/** A formula from a spreadsheet: pasted or from a file, looked at and put right, and only then saved. */
export function SpreadsheetImport() {
  const app = useApp()
  const model = useMemo(() => createSpreadsheet(app), [app])
  useEffect(() => void model.load(), [model])
  const { kept, table } = model
  if (!model.loaded.value || !app.catalogue.loaded.value) return <main class="formulas" aria-busy="true" />
  const begun = kept.value !== null && table.value !== null
  return (
    <main class={begun ? 'formulas' : 'formulas formulas-none'}>
      <div class="formulas-main">
        <header class="formula-head">
          <Button kind="plain" icon="arrow-left" label="Formulas" href={addressOf({ place: 'formulas' })} />
          <div class="formula-title">
            <h1>From a spreadsheet</h1>
            <p class="formula-facts">
              {begun ? 'Look it over. Nothing is saved yet.' : 'Nothing is saved before you have looked it over.'}
            </p>
          </div>
        </header>
        {kept.value === null || table.value === null ? (
          <SpreadsheetStart model={model} />
        ) : (
          <>
            <Card label="The formula">
              <SpecFields
                specs={importHeadFields}
                values={kept.value.head}
                errors={model.headErrors.value}
                onChange={model.setHead}
              />
            </Card>
            <SpreadsheetColumns model={model} kept={kept.value} table={table.value} />
            <SpreadsheetRows model={model} kept={kept.value} table={table.value} />
          </>
        )}
      </div>
      {kept.value !== null && table.value !== null && (
        <SpreadsheetSide model={model} kept={kept.value} table={table.value} />
      )}
    </main>
  )
}
