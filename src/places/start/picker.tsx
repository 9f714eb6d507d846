import './picker.css'
import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { addressOf } from '../../app/routes'
import type { Formula } from '../../batch/formula'
import { Button } from '../../parts/button'
import { EmptyState } from '../../parts/empty'
import { SelectField, TextField } from '../../parts/form'
import { readChoice } from './choice'
import { shortMass } from './size'

/** Which formula, and which revision where it is not the newest. */
export const FormulaPicker = () => {
  const app = useApp()
  const [sought, setSought] = useState('')
  const all = [...app.catalogue.formulas.value.values()].filter(
    ({ archived, revisions }) => !archived && revisions.length > 0,
  )
  const found = all.filter((formula) => isFound(formula, sought))
  return (
    <main class="picker">
      <header class="start-strip">
        <Button kind="plain" icon="arrow-left" label="Bench" href={addressOf({ place: 'bench' })} />
        <div class="start-title">
          <h1>Start a batch</h1>
          <p>Of which formula?</p>
        </div>
      </header>
      <div class="picker-body">
        {app.catalogue.loaded.value && all.length === 0 ? (
          <NoFormulas />
        ) : (
          <>
            <TextField label="Find a formula" hint="by name or code" value={sought} onChange={setSought} />
            {found.length === 0 && all.length > 0 && <p class="picker-none">No formula is called "{sought}".</p>}
            <ul class="picker-list">
              {found.map((formula) => (
                <li key={formula.id}>
                  <FormulaCard formula={formula} />
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
    </main>
  )
}

const FormulaCard = ({ formula }: { formula: Formula }) => {
  const app = useApp()
  const format = useFormat()
  const newestFirst = [...formula.revisions].sort((a, b) => b.number - a.number)
  const newest = newestFirst[0]?.number
  const [number, setNumber] = useState(newest)
  const revision = newestFirst.find((each) => each.number === number)
  const choose = async () => {
    const key = `start:${formula.id}`
    const draft = readChoice(await app.drafts.read(key))
    const chosen = { ...draft, revision: number === newest || number === undefined ? null : number }
    await app.drafts.write(key, JSON.stringify(chosen))
    app.go({ place: 'start', formula: formula.id })
  }
  return (
    <article class="picker-card">
      <div class="picker-words">
        <h2 title={formula.name}>{formula.name}</h2>
        <p>
          {formula.code} r{number}, {formula.contact}
          {revision && `, usually ${shortMass(revision.usualSizeUg, format)}`}
        </p>
        {revision?.note && <p class="picker-note">{revision.note}</p>}
      </div>
      {newestFirst.length > 1 && (
        <SelectField
          label="Revision"
          value={String(number)}
          options={newestFirst.map((each) => ({
            value: String(each.number),
            label: each.number === newest ? `r${each.number}, the newest` : `r${each.number}`,
          }))}
          onChange={(value) => setNumber(Number(value))}
        />
      )}
      <Button kind="outline" label="Choose" name={`Choose ${formula.name}`} onPress={() => void choose()} />
    </article>
  )
}

const NoFormulas = () => (
  <EmptyState
    title="No formula yet"
    text="A formula says what goes in, in which phase, and how. Write the first one, import one, or load the demonstration from the bench."
    actions={
      <>
        <Button kind="filled" icon="plus" label="Go to Formulas" href={addressOf({ place: 'formulas' })} />
        <Button label="Bench" href={addressOf({ place: 'bench' })} />
      </>
    }
  />
)

function isFound({ name, code, nickname }: Formula, sought: string): boolean {
  const words = sought.toLowerCase().split(/\s+/)
  const text = `${name} ${code} ${nickname}`.toLowerCase()
  return words.every((word) => text.includes(word))
}
