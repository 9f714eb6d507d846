import type { ColumnRole, Mapping } from '../../app/import/table/mapping'
import type { RowKind } from '../../app/import/table/settled'
import { columnLetters } from '../../app/import/table/sheet'
import type { ReadRow } from '../../app/import/table/understood'
import { Button } from '../../parts/button'
import { SelectField, TextField } from '../../parts/form'
import type { SpreadsheetModel } from './spreadsheet-model'

interface RowFormProps {
  model: SpreadsheetModel
  row: ReadRow
  mapping: Mapping
  /** The cells to put right; null is all of them. */
  columns: readonly (number | null)[]
  /** Somebody is in one of its fields, or has left them. */
  onEnter: () => void
  onLeave: () => void
}

/** Puts one row right: what it is, and what its cells say. The sheet itself stays as it was. */
export function RowForm({ model, row, mapping, columns, onEnter, onLeave }: RowFormProps) {
  const shown = mapping.roles.flatMap((role, column) => (isShown(role) ? [{ role, column }] : []))
  const fields = shown.filter(({ column }) => columns.includes(column) || columns.includes(null))
  return (
    <div
      class="sheet-form"
      onFocusIn={onEnter}
      onFocusOut={(event) => {
        const to = event.relatedTarget
        if (!(to instanceof Node) || !event.currentTarget.contains(to)) onLeave()
      }}
    >
      {row.kind === 'line' &&
        fields.map(({ role, column }) => (
          <TextField
            key={column}
            label={`${roleLabel[role]} (${columnLetters(column)}${row.row + 1})`}
            value={row.cells[column] ?? ''}
            onChange={(text) => model.setCell(row.row, column, text)}
          />
        ))}
      <SelectField
        label="Take this row for"
        value={row.kind}
        options={kinds}
        onChange={(value) => model.setKind(row.row, kinds.find((kind) => kind.value === value)?.value ?? null)}
      />
      {row.kind !== 'left-out' && (
        <Button label="Leave it out" icon="minus" onPress={() => model.setKind(row.row, 'left-out')} />
      )}
    </div>
  )
}

const kinds: readonly { readonly value: RowKind; readonly label: string }[] = [
  { value: 'line', label: 'a line of the formula' },
  { value: 'phase', label: 'the beginning of a phase' },
  { value: 'total', label: 'a total' },
  { value: 'note', label: 'a note' },
  { value: 'title', label: 'the title' },
  { value: 'heading', label: 'headings of the columns' },
  { value: 'left-out', label: 'left out' },
]

type ShownRole = Exclude<ColumnRole, 'ignore' | 'note' | 'phase-name'>

const isShown = (role: ColumnRole): role is ShownRole => role in roleLabel

const roleLabel: Readonly<Record<ShownRole, string>> = {
  phase: 'Phase',
  name: 'Name',
  inci: 'INCI name',
  percent: 'Share',
  grams: 'Mass',
  function: 'What it does',
  supplier: 'Supplier',
}
