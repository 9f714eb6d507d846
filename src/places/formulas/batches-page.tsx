import './formulas.css'
import './batches.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { type Format, useFormat } from '../../app/format'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { EmptyState } from '../../parts/empty'
import { SelectField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { PillButton } from '../../parts/pill-button'
import { type BatchesModel, createBatchesModel, mostBatches } from './batches-model'
import { BatchesTable } from './batches-table'
import { GoesWithList } from './goes-with-list'
import { RunChart } from './run-chart'

/** So many are offered to choose from. */
const offered = 48

/** Batches of one formula side by side: what they differ in, one measure over all of them, and what goes with it. */
export function BatchesPage({ formula, asked }: { formula: string; asked: string | undefined }) {
  const app = useApp()
  const format = useFormat()
  const model = useMemo(() => createBatchesModel(app, formula, asked), [app, formula, asked])
  useEffect(() => void model.load(), [model])
  const name = app.catalogue.formulas.value.get(formula)?.name ?? model.known.value[0]?.formulaName ?? 'this formula'
  if (model.state.value === 'reading') return <main class="formulas" aria-busy="true" />
  return (
    <main class="formulas formulas-none">
      <div class="formulas-main">
        <header class="formula-head">
          <Button kind="plain" icon="arrow-left" label="Formula" href={addressOf({ place: 'formulas', formula })} />
          <div class="formula-title">
            <h1>Batches side by side</h1>
            <p class="formula-facts">{name}. What differs most stands first, in units of its tolerance.</p>
          </div>
        </header>
        {model.known.value.length < 2 ? (
          <EmptyState
            title="There is nothing to compare yet"
            text="As soon as two batches of this formula are closed, they stand side by side here."
            actions={
              <Button icon="arrow-left" label="To the formula" href={addressOf({ place: 'formulas', formula })} />
            }
          />
        ) : (
          <Compared model={model} formula={formula} format={format} />
        )}
      </div>
    </main>
  )
}

interface PartProps {
  model: BatchesModel
  formula: string
  format: Format
}

function Compared({ model, formula, format }: PartProps) {
  const rows = model.rows.value
  const about = model.about.value
  const batches = model.compared.value
  const unreadable = model.unreadable.value
  return (
    <>
      <Choose model={model} format={format} />
      {unreadable.length > 0 && (
        <Notice kind="caution" title={`Cannot be read, and left out: ${unreadable.join(', ')}`} />
      )}
      {about === undefined ? (
        <Notice kind="info" title="Choose at least two batches." />
      ) : (
        <>
          <Card label="One measure over the batches" class="formula-card-flat">
            <h2>One measure over the batches</h2>
            <SelectField
              label="Which"
              value={about.id}
              options={[...rows]
                .sort((a, b) => Number(b.kind === 'check') - Number(a.kind === 'check'))
                .map(({ id, label }) => ({ value: id, label }))}
              onChange={model.ask}
            />
            <RunChart row={about} batches={batches} format={format} />
          </Card>
          <Card label="What differs" class="formula-card-flat">
            <h2>What differs</h2>
            <BatchesTable rows={rows} batches={batches} formula={formula} format={format} />
          </Card>
          <GoesWithList about={about} answers={model.answers.value} batches={batches.length} format={format} />
        </>
      )}
    </>
  )
}

/** Which batches stand side by side: the newest at first. */
function Choose({ model, format }: Pick<PartProps, 'model' | 'format'>) {
  const known = model.known.value
  const chosen = model.chosen.value
  const shown = known.filter(({ id }, index) => index < offered || chosen.has(id))
  return (
    <section aria-label="Which batches" class="batches-choose">
      <p class="formulas-hint">
        {countWords(known.length, chosen.size)}
        {model.isCut.value && ' Older ones were not looked for.'}
      </p>
      <div class="batches-chips">
        {shown.map(({ id, code, openedAtMs }) => (
          <PillButton
            key={id}
            text={`${code}, ${format.date(openedAtMs)}`}
            selected={chosen.has(id)}
            onPress={() => model.toggle(id)}
          />
        ))}
      </div>
    </section>
  )
}

function countWords(known: number, chosen: number): string {
  if (chosen === known) return `All ${known} finished batches of this formula.`
  const full =
    chosen >= mostBatches ? ` Not more than ${mostBatches} fit side by side: take one off to put another on.` : ''
  return `${chosen} of ${known} finished batches; the newest were taken first.${full}`
}
