import { useState } from 'preact/hooks'
import type { ReadTable } from '../../app/import/table/understood'
import { Card } from '../../parts/card'
import type { KeptImport } from './spreadsheet-kept'
import type { SpreadsheetModel } from './spreadsheet-model'
import { SpreadsheetRow } from './spreadsheet-row'

interface RowsProps {
  model: SpreadsheetModel
  kept: KeptImport
  table: ReadTable
}

/** Every row of the sheet as it was understood. What is to be settled stands open; any other opens by a tap. */
export function SpreadsheetRows({ model, kept, table }: RowsProps) {
  const [opened, setOpened] = useState<number | null>(null)
  const open = new Set(model.open.value)
  return (
    <Card class="formula-card-flat" label="The rows">
      <h2>The rows, as they were understood</h2>
      <ol class="sheet-rows">
        {table.rows.map((row) => (
          <SpreadsheetRow
            key={row.row}
            model={model}
            row={row}
            mapping={kept.mapping}
            phase={table.phases[row.phase]?.letter ?? ''}
            isAsked={open.has(row.row)}
            isOpen={opened === row.row}
            onToggle={() => setOpened(opened === row.row ? null : row.row)}
          />
        ))}
      </ol>
    </Card>
  )
}
