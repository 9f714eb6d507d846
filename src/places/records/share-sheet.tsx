import './share-sheet.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { createHandOver } from '../../app/import/hand-over'
import type { BatchRecord } from '../../batch/record'
import { Button } from '../../parts/button'
import { Notice } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'
import { entriesCsv } from './entries-csv'
import { paperLine } from './paper-line'
import { htmlOf, picturesRead } from './record-html'
import { fileNameOf, type RecordModel } from './record-model'

interface ShareSheetProps {
  record: BatchRecord
  model: RecordModel
  onClose: () => void
}

/** The record as a page, as a table, and as the batch itself. */
export function ShareSheet({ record, model, onClose }: ShareSheetProps) {
  const app = useApp()
  const hand = useMemo(() => createHandOver(app), [app])
  const name = fileNameOf(record.header.code)
  // A share sheet wants its bytes in the tap: what writes the table is fetched before.
  useEffect(() => void import('papaparse'), [])
  const sharePage = () => {
    const paper = document.querySelector('.paper')
    if (paper === null) return
    const page = picturesRead(paper).then(() => htmlOf(paper, paperLine(record.header)))
    void hand.hand(`${name}.html`, 'text/html', page)
  }
  const shareTable = (mark: '.' | ',') => void hand.hand(`${name}-entries.csv`, 'text/csv', entriesCsv(record, mark))
  const said = hand.said.value
  return (
    <Sheet title="Save or share" onClose={onClose}>
      <div class="share-sheet">
        <h3>To read</h3>
        <p>The whole record as one page. It opens in any browser, without the app and without a network.</p>
        <Button kind="filled" icon="file-text" label="Save as a page (HTML)" onPress={sharePage} />
        <h3>To reckon with</h3>
        <p>Every entry as a row of a table, what was struck out too.</p>
        <div class="share-sheet-row">
          <Button icon="download" label="CSV, decimal comma and semicolons" onPress={() => shareTable(',')} />
          <Button icon="download" label="CSV, decimal point and commas" onPress={() => shareTable('.')} />
        </div>
        <h3>To go on with</h3>
        <p>The batch itself, entry by entry with its hashes (NDJSON): for another tablet, and to verify.</p>
        <Button
          icon="download"
          label="Save this batch"
          onPress={() => {
            model.save()
            onClose()
          }}
        />
        {said && <Notice kind={said.good ? 'good' : 'over'} title={said.text} live />}
      </div>
    </Sheet>
  )
}
