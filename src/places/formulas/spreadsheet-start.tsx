import '../../app/import/archive-import.css'
import { useId, useState } from 'preact/hooks'
import { hasHtmlTable } from '../../app/import/table/read-html'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { TextField } from '../../parts/form'
import { Icon } from '../../parts/icon'
import { Notice } from '../../parts/notice'
import type { SpreadsheetModel } from './spreadsheet-model'

/** The two ways in: cells that were copied, or a file. */
export function SpreadsheetStart({ model }: { model: SpreadsheetModel }) {
  const [text, setText] = useState('')
  const busy = model.busy.value
  const onPaste = (event: ClipboardEvent) => {
    const html = event.clipboardData?.getData('text/html') ?? ''
    const plain = event.clipboardData?.getData('text/plain') ?? ''
    const table = hasHtmlTable(html) ? html : /[\t\n]/.test(plain.trim()) ? plain : ''
    if (table === '') return
    event.preventDefault()
    setText(plain)
    void model.paste(table)
  }
  return (
    <>
      <div aria-live="polite">{model.refusal.value && <Notice kind="over" title={model.refusal.value} />}</div>
      <div class="formula-two">
        <Card class="sheet-way" label="Paste the cells">
          <h2>Paste the cells</h2>
          <div onPaste={onPaste}>
            <TextField
              label="Cells from a spreadsheet"
              hint="Copy the rows of the formula with their headings, and paste them here."
              rows={6}
              value={text}
              onChange={setText}
            />
          </div>
          <Button
            icon="arrow-right"
            label={busy ? 'Reading…' : 'Read them'}
            disabled={busy || text.trim() === ''}
            onPress={() => void model.paste(text)}
          />
        </Card>
        <Card class="sheet-way" label="Or take a file">
          <h2>Or take a file</h2>
          <SheetFile busy={busy} onFile={(file) => void model.takeFile(file)} />
          <p class="formulas-hint">
            A workbook (.xlsx) or CSV, 5 MB at most. Columns may stand in any order; decimals with point or comma;
            shares in percent, as fractions, or grams.
          </p>
          <p class="formulas-hint">It stays on this tablet. Sums in cells are not run: what was worked out is taken.</p>
        </Card>
      </div>
    </>
  )
}

function SheetFile({ busy, onFile }: { busy: boolean; onFile: (file: File) => void }) {
  const id = useId()
  return (
    <label class="bring-choose" for={id}>
      <Icon name="upload" />
      <span>{busy ? 'Reading…' : 'Choose a file'}</span>
      <input
        id={id}
        type="file"
        accept=".xlsx,.csv,.tsv,.txt,.htm,.html,text/csv,text/tab-separated-values,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
        disabled={busy}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0]
          // Emptied, so that the same file can be chosen again after it was mended.
          event.currentTarget.value = ''
          if (file) onFile(file)
        }}
      />
    </label>
  )
}
