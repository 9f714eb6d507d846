import './records.css'
import './record.css'
import './stability.css'
import './jar-labels.css'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { jarAddress, stabilityAddress } from '../../app/jar-address'
import { Button } from '../../parts/button'
import { Choice } from '../../parts/choice'
import { EmptyState } from '../../parts/empty'
import { SelectField, TextField } from '../../parts/form'
import { NumberField } from '../../parts/number-field'
import { type JarLabel, JarLabelPage } from './jar-label-page'
import { jarSheets, placesOn } from './jar-sheets'
import { createStabilityModel } from './stability-model'

/** Labels for the jars of one batch, laid out for a sheet as it is sold; the code on each leads to its entry. */
export function JarLabels({ batch }: { batch: string }) {
  const app = useApp()
  const format = useFormat()
  const model = useMemo(() => createStabilityModel(app, batch), [app, batch])
  useEffect(() => void model.open(), [model])
  const [which, setWhich] = useState<'left' | 'all'>('left')
  const [sheetId, setSheetId] = useState(jarSheets[0]?.id ?? '')
  const [first, setFirst] = useState('1')
  const [foot, setFoot] = useState('Hazards: none')
  const sheet = jarSheets.find(({ id }) => id === sheetId)
  const { value: state } = model.state
  const { value: stability } = model.stability
  if (model.sight.value === 'reading' || sheet === undefined) return <main class="stability" aria-busy="true" />
  const onOne = sheet.columns * sheet.rows
  const at = /^\d+$/.test(first.trim()) ? Number(first) : 0
  const isPlace = at >= 1 && at <= onOne
  const pulls = (stability?.pulls ?? []).filter(({ left }) => which === 'all' || left.length > 0)
  const labels = pulls.map(
    ({ id, condition, at: stood, dueAtMs }): JarLabel => ({
      id,
      address: new URL(jarAddress(batch, id), window.location.href).href,
      lines: [
        state?.header.code ?? '',
        state?.header.shortName ?? '',
        condition.label,
        condition.cycles ? `cycle ${stood}` : stood > 0 && stood % 7 === 0 ? `week ${stood / 7}` : `day ${stood}`,
        `pull ${format.date(dueAtMs)}`,
        foot,
      ],
    }),
  )
  const places = isPlace ? placesOn(sheet, labels.length, at) : []
  const sheets = [...new Set(places.map((place) => place.sheet))]
  return (
    <main class="stability jar-labels">
      <div class="record-tools">
        <Button kind="plain" icon="arrow-left" label="Kept jars" href={stabilityAddress(batch)} />
        {places.length > 0 && (
          <Button
            kind="filled"
            icon="printer"
            label={`Print ${labels.length === 1 ? '1 label' : `${labels.length} labels`}`}
            onPress={() => window.print()}
          />
        )}
      </div>
      <header class="stability-head">
        <h1>Jar labels</h1>
        <p>Print at 100 %, without margins of the printer's own.</p>
      </header>
      {stability === null ? (
        <EmptyState
          title="No jars are planned yet"
          text="Make the stability plan of this batch first: each of its jars then has a label."
          actions={<Button kind="filled" label="To the kept jars" href={stabilityAddress(batch)} />}
        />
      ) : (
        <div class="jar-labels-form">
          <Choice
            label="Which jars"
            value={which}
            options={[
              { value: 'left', label: 'Still to be read' },
              { value: 'all', label: 'All' },
            ]}
            onChange={setWhich}
          />
          <SelectField
            label="Sheet"
            value={sheetId}
            options={jarSheets.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={setSheetId}
          />
          <NumberField
            label="First free label"
            hint="counted row by row from the top left"
            value={first}
            onChange={setFirst}
            error={isPlace ? undefined : `Type a number from 1 to ${onOne}.`}
          />
          <TextField label="Last line" value={foot} onChange={setFoot} />
        </div>
      )}
      {sheets.map((number) => (
        <JarLabelPage
          key={`${sheet.id} ${number}`}
          sheet={sheet}
          labels={labels.flatMap((label, index) => {
            const place = places[index]
            return place?.sheet === number ? [{ ...label, ...place }] : []
          })}
        />
      ))}
    </main>
  )
}
