import './formulas.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { BringIn } from '../../app/import/archive-import'
import { addressOf } from '../../app/routes'
import type { Formula } from '../../batch/formula'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Row, Switch } from '../../parts/choice'
import { EmptyState } from '../../parts/empty'
import { TextField } from '../../parts/form'
import { Pill } from '../../parts/pill'
import { createFormulasModel, type FormulasModel } from './model'

/** Where a formula is brought in from a spreadsheet. No formula can have this for its id. */
export const spreadsheetAddress = '~spreadsheet'

export function FormulasList() {
  const app = useApp()
  const model = useMemo(() => createFormulasModel(app), [app])
  useEffect(() => void model.readBegun(), [model])
  const formulas = model.formulas.value
  return (
    <main class="formulas">
      <div class="formulas-main">
        <header class="formulas-head">
          <h1>Formulas</h1>
          <div class="formulas-search">
            <TextField
              label="Find by name, code, material or INCI"
              value={model.search.value}
              onChange={model.setSearch}
            />
          </div>
        </header>
        {formulas.length > 0 ? (
          <ol class="formulas-cards" aria-label="Formulas">
            {formulas.map((formula) => (
              <li key={formula.id}>
                <FormulaCard formula={formula} />
              </li>
            ))}
          </ol>
        ) : (
          <NoFormula model={model} />
        )}
      </div>
      <aside class="formulas-side" aria-label="More formulas">
        <Button kind="outline" size="primary" icon="plus" label="New formula" onPress={() => void model.begin()} full />
        <Button
          icon="file-text"
          label="From a spreadsheet"
          sub="paste cells, or a file"
          href={addressOf({ place: 'formulas', formula: spreadsheetAddress })}
          full
        />
        <Begun model={model} />
        <BringIn />
        <p class="formulas-hint">A file of formulas and materials (JSON), or one that Pannikin saved.</p>
        {model.archivedCount.value > 0 && (
          <Switch
            label="Show archived ones"
            hint={`${model.archivedCount.value} put away`}
            checked={model.withArchived.value}
            onChange={model.showArchived}
          />
        )}
      </aside>
    </main>
  )
}

function FormulaCard({ formula }: { formula: Formula }) {
  const format = useFormat()
  const revision = formula.revisions.at(-1)
  return (
    <Card class="formula-card" label={formula.name}>
      <a class="formula-card-words" href={addressOf({ place: 'formulas', formula: formula.id })}>
        <span class="formula-card-name">{formula.name}</span>
        <span class="formula-card-facts">
          <strong>{formula.code}</strong> r{revision?.number} · {formula.contact}
          {revision && ` · usually ${format.massWithUnit(revision.usualSizeUg, 1_000_000)}`}
        </span>
        {formula.archived && <Pill text="archived" />}
      </a>
      <Button
        class="formula-card-start"
        icon="play"
        label="Start a batch"
        name={`Start a batch of ${formula.name}`}
        href={addressOf({ place: 'start', formula: formula.id })}
      />
    </Card>
  )
}

function Begun({ model }: { model: FormulasModel }) {
  const begun = model.begun.value
  if (begun.length === 0) return null
  return (
    <section aria-label="Begun and not saved">
      <h2>Begun, not saved</h2>
      {begun.map(({ id, head }) => (
        <Row
          key={id}
          icon="pencil"
          label={head.values.name || 'Without a name yet'}
          sub={head.values.code || 'no code yet'}
          href={addressOf({ place: 'formulas', formula: id })}
        />
      ))}
    </section>
  )
}

function NoFormula({ model }: { model: FormulasModel }) {
  if (model.search.value !== '') return <p class="formulas-hint">No formula of that name, code or material.</p>
  return (
    <EmptyState
      title="No formula yet"
      text="A formula says what goes in, in percent, in which order, and what the finished product must be. A batch is a formula, a size and the lots in hand."
      actions={<Button kind="filled" icon="plus" label="Write the first one" onPress={() => void model.begin()} />}
    />
  )
}
