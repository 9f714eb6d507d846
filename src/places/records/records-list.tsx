import './records.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { BringIn } from '../../app/import/archive-import'
import { createSaver, everythingName } from '../../app/import/save-file'
import { SaveNotice } from '../../app/import/save-notice'
import { allBatches } from '../../app/jar-address'
import { addressOf } from '../../app/routes'
import type { BatchSummary } from '../../batch/summary'
import { Button } from '../../parts/button'
import { Choice, type ChoiceOption } from '../../parts/choice'
import { EmptyState } from '../../parts/empty'
import { TextField } from '../../parts/form'
import type { Sieve } from './find'
import { createRecordsModel, type RecordsModel } from './model'
import { RecordRow } from './record-row'

export function RecordsList() {
  const app = useApp()
  const model = useMemo(() => createRecordsModel(app), [app])
  const saver = useMemo(() => createSaver(app), [app])
  useEffect(() => void model.readAgain(), [model, app.batches.inHand.value])
  const searching = model.search.value !== '' || model.sieve.value !== 'all'
  return (
    <main class="records">
      <div class="records-main">
        <header class="records-head">
          <h1>Records</h1>
          <div class="records-search">
            <TextField
              label="Find by code, formula, lot, person or date"
              value={model.search.value}
              onChange={model.setSearch}
              placeholder="LOT-01-009, gel, RK, 24 Nov"
            />
          </div>
          <Choice
            label="Which batches"
            hideLabel
            value={model.sieve.value}
            options={sieves}
            onChange={model.setSieve}
          />
        </header>
        <Shelf title="In hand" batches={model.inHand.value} />
        <Shelf title="Finished" batches={model.finished.value} />
        <Foot model={model} searching={searching} />
      </div>
      <aside class="records-side" aria-label="Kept jars and files">
        <h2>Kept jars</h2>
        <Button
          icon="calendar-clock"
          label="Stability pulls"
          href={addressOf({ place: 'records', batch: allBatches })}
          full
        />
        <h2>Files</h2>
        <p class="records-hint">
          A file is the only copy that leaves this tablet. It holds every entry with its hash, and can be brought in
          again here or elsewhere; twice is no harm.
        </p>
        <Button
          icon="download"
          label="Save everything"
          onPress={() => void saver.save('all', everythingName(app.clock.nowMs()))}
          full
        />
        <SaveNotice saver={saver} />
        <BringIn />
      </aside>
    </main>
  )
}

function Shelf({ title, batches }: { title: string; batches: readonly BatchSummary[] }) {
  const format = useFormat()
  if (batches.length === 0) return null
  return (
    <section class="records-shelf" aria-label={title}>
      <h2>{title}</h2>
      <ul>
        {batches.map((batch) => (
          <li key={batch.id}>
            <RecordRow batch={batch} format={format} />
          </li>
        ))}
      </ul>
    </section>
  )
}

const sieves: readonly ChoiceOption<Sieve>[] = [
  { value: 'all', label: 'all' },
  { value: 'to-do', label: 'to look at' },
  { value: 'off-plan', label: 'not as planned' },
]

/** What stands under the lists: more rows, nothing found, or what will be here one day. */
function Foot({ model, searching }: { model: RecordsModel; searching: boolean }) {
  const none = model.inHand.value.length === 0 && model.finished.value.length === 0
  if (model.reading.value && none) return <p class="records-hint">Reading…</p>
  if (none && searching) return <p class="records-hint">Nothing like that. Try fewer letters, or all batches.</p>
  if (none)
    return (
      <EmptyState
        title="No record yet"
        text="Every batch keeps its record from the first tap: what was weighed, from which lot, by whom, what went wrong and what was done about it."
        actions={<Button kind="filled" icon="plus" label="Start a batch" href={addressOf({ place: 'start' })} />}
      />
    )
  if (!model.more.value) return null
  return <Button label="Show earlier ones" disabled={model.reading.value} onPress={() => void model.readMore()} />
}
