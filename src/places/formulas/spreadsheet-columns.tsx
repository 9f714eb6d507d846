import type { ColumnRole } from '../../app/import/table/mapping'
import { columnLetters } from '../../app/import/table/sheet'
import type { ReadTable } from '../../app/import/table/understood'
import { tableSentence } from '../../app/refusals/forms-spreadsheet'
import { Card } from '../../parts/card'
import { SelectField, type SelectOption } from '../../parts/form'
import { Notice } from '../../parts/notice'
import type { KeptImport } from './spreadsheet-kept'
import type { SpreadsheetModel } from './spreadsheet-model'

interface PreviewProps {
  model: SpreadsheetModel
  kept: KeptImport
  table: ReadTable
}

/** How the sheet is read: which sheet, what each column holds, how its figures are written. Each can be changed. */
export function SpreadsheetColumns({ model, kept, table }: PreviewProps) {
  const { mapping, sheets, chosen } = kept
  const rows = sheets[chosen]?.rows ?? []
  const used = mapping.roles.includes('percent') || mapping.roles.includes('grams')
  return (
    <Card class="formula-card-flat" label="What the columns hold">
      <h2>What the columns hold</h2>
      {table.problems
        .filter(({ code }) => code === 'TABLE_NO_NAMES' || code === 'TABLE_NO_AMOUNTS' || code === 'TABLE_NO_LINES')
        .map((problem) => (
          <Notice key={problem.code} kind="caution" title={tableSentence(problem)} />
        ))}
      <div class="sheet-columns">
        {sheets.length > 1 && (
          <SelectField
            label="Sheet"
            value={String(chosen)}
            options={sheets.map(({ name }, at) => ({ value: String(at), label: name }))}
            onChange={(value) => model.chooseSheet(Number(value))}
          />
        )}
        <SelectField
          label="Headings stand in"
          value={String(mapping.heading)}
          options={headingOptions(rows)}
          onChange={(value) => model.setMapping({ heading: Number(value) })}
        />
        {used && (
          <SelectField
            label="Decimal mark"
            value={mapping.mark}
            options={[
              { value: '.', label: 'point: 1.5' },
              { value: ',', label: 'comma: 1,5' },
            ]}
            onChange={(value) => model.setMapping({ mark: value === ',' ? ',' : '.' })}
          />
        )}
        {mapping.roles.includes('percent') && (
          <SelectField
            label="Shares are"
            value={mapping.scale}
            options={[
              { value: 'percent', label: 'percent: 4 is 4 %' },
              { value: 'fraction', label: 'fractions: 0.04 is 4 %' },
            ]}
            onChange={(value) => model.setMapping({ scale: value === 'fraction' ? 'fraction' : 'percent' })}
          />
        )}
      </div>
      <div class="sheet-columns">
        {mapping.roles.map((role, column) => (
          <SelectField
            key={column}
            label={`Column ${columnLetters(column)}${rows[mapping.heading]?.[column] ? `: ${rows[mapping.heading]?.[column]}` : ''}`}
            hint={sampleOf(rows, mapping.heading, column)}
            value={role}
            options={roleOptions}
            onChange={(value) => model.setRole(column, roleOf(value))}
          />
        ))}
      </div>
    </Card>
  )
}

const roleOptions: readonly SelectOption[] = [
  { value: 'ignore', label: 'nothing needed' },
  { value: 'phase', label: 'phase' },
  { value: 'phase-name', label: 'name of the phase' },
  { value: 'name', label: 'name of the material' },
  { value: 'inci', label: 'INCI name' },
  { value: 'percent', label: 'share of the batch' },
  { value: 'grams', label: 'mass' },
  { value: 'function', label: 'what it does' },
  { value: 'supplier', label: 'supplier' },
  { value: 'note', label: 'note' },
]

const roleNames: readonly ColumnRole[] = [
  'phase',
  'phase-name',
  'name',
  'inci',
  'percent',
  'grams',
  'function',
  'supplier',
  'note',
]

const roleOf = (value: string): ColumnRole => roleNames.find((role) => role === value) ?? 'ignore'

function headingOptions(rows: readonly (readonly string[])[]): SelectOption[] {
  const first = rows.slice(0, 40).map((row, at) => ({
    value: String(at),
    label: `row ${at + 1}: ${row.filter((text) => text !== '').join(', ')}`.slice(0, 60),
  }))
  return [{ value: '-1', label: 'no row' }, ...first]
}

/** What stands in a column, so that it is known again. */
function sampleOf(rows: readonly (readonly string[])[], heading: number, column: number): string {
  const texts = rows.slice(heading + 1).map((row) => row[column] ?? '')
  const some = [...new Set(texts.filter((text) => text !== ''))].slice(0, 3).join(' · ')
  return some === '' ? 'empty' : some.length > 60 ? `${some.slice(0, 59)}…` : some
}
