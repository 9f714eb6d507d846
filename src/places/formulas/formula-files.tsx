import { useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { formulaCsv } from '../../app/import/formula-csv'
import { createHandOver, fileNameOf } from '../../app/import/hand-over'
import { formulaFile } from '../../app/import/write-documents'
import type { Formula, Revision } from '../../batch/formula'
import { Button } from '../../parts/button'
import { Notice } from '../../parts/notice'

/** A formula leaves the tablet: whole, or its lines as a table for a spreadsheet. */
export function FormulaFiles({ formula, revision }: { formula: Formula; revision: Revision }) {
  const app = useApp()
  const files = useMemo(() => createHandOver(app), [app])
  const materials = app.catalogue.materials.value
  const said = files.said.value
  const csv = () => formulaCsv(formula, revision, materials, app.settings.decimalMark.value)
  return (
    <>
      <Button
        icon="download"
        label="Save as a file"
        sub="all of it, with its materials"
        onPress={() =>
          void files.hand(fileNameOf(formula.code, 'json'), 'application/json', formulaFile(formula, materials))
        }
        full
      />
      <Button
        icon="file-text"
        label="Save as a table"
        sub="its lines, for a spreadsheet"
        onPress={() => void files.hand(fileNameOf(`${formula.code}-r${revision.number}`, 'csv'), 'text/csv', csv())}
        full
      />
      {said && <Notice kind={said.good ? 'good' : 'over'} title={said.text} live />}
    </>
  )
}
