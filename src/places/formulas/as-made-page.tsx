import './formulas.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { type Format, useFormat } from '../../app/format'
import { addressOf } from '../../app/routes'
import type { MadeOtherwise } from '../../batch/made-otherwise'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Switch } from '../../parts/choice'
import { EmptyState } from '../../parts/empty'
import { Notice } from '../../parts/notice'
import { PressAndHold } from '../../parts/press-and-hold'
import { type AsMadeModel, createAsMade } from './as-made-model'

/** A batch as it was made beside its revision: what of it the next revision takes over, one by one. */
export function AsMadePage({ formula, batch }: { formula: string; batch: string }) {
  const app = useApp()
  const model = useMemo(() => createAsMade(app, formula, batch), [app, formula, batch])
  useEffect(() => void model.load(), [model])
  const header = model.header.value
  if (model.missing.value) return <Missing />
  if (header === null) return <main class="formulas" aria-busy="true" />
  const differences = model.differences.value
  return (
    <main class="formulas">
      <div class="formulas-main">
        <header class="formula-head">
          <Button kind="plain" icon="arrow-left" label="Formula" href={addressOf({ place: 'formulas', formula })} />
          <div class="formula-title">
            <h1>{header.code} as it was made</h1>
            <p class="formula-facts">
              Beside r{header.revision.number} of {header.formulaName}. What is on goes into the next revision.
            </p>
          </div>
        </header>
        <Group model={model} title="Beyond what the formula says" made={differences.filter(({ beyond }) => beyond)} />
        <Group model={model} title="Within its bands" made={differences.filter(({ beyond }) => !beyond)} />
        {differences.length === 0 && (
          <Notice kind="good" title="It was made to the letter: there is nothing to take over." />
        )}
      </div>
      <Take model={model} formula={formula} />
    </main>
  )
}

function Group({ model, title, made }: { model: AsMadeModel; title: string; made: readonly MadeOtherwise[] }) {
  const format = useFormat()
  if (made.length === 0) return null
  return (
    <Card label={title} class="formula-card-flat">
      <h2>{title}</h2>
      {made.map((each) => (
        <Switch
          key={each.id}
          label={each.title}
          hint={wordsOf(each, format)}
          checked={model.chosen.value.has(each.id)}
          onChange={() => model.toggle(each.id)}
        />
      ))}
    </Card>
  )
}

function Take({ model, formula }: { model: AsMadeModel; formula: string }) {
  const count = model.chosen.value.size
  const sub =
    count === 0
      ? `as r${model.header.value?.revision.number ?? ''}`
      : `${count} of ${model.differences.value.length} taken over`
  return (
    <aside class="formulas-side" aria-label="Next revision">
      {model.hasBegun.value ? (
        <>
          <Notice
            kind="caution"
            title="A change of this formula was begun and is not saved. Taking this batch over throws it away."
          />
          <Button
            kind="outline"
            icon="pencil"
            label="Go on with that change"
            href={addressOf({ place: 'formulas', formula })}
            full
          />
          <PressAndHold label="Throw it away, take this over" icon="trash" onDone={() => void model.take()} full />
        </>
      ) : (
        <Button
          kind="filled"
          size="primary"
          icon="pencil"
          label="Write the next revision"
          sub={sub}
          onPress={() => void model.take()}
          full
        />
      )}
      <p class="formulas-hint">It opens in the editor with these figures, to be looked through and saved.</p>
    </aside>
  )
}

const Missing = () => (
  <main class="formulas formulas-none">
    <EmptyState
      title="That batch, or its formula, is not here"
      text="They may stand on another tablet, or in a file that was not brought in yet."
      actions={<Button icon="arrow-left" label="To the formulas" href={addressOf({ place: 'formulas' })} />}
    />
  </main>
)

function wordsOf(made: MadeOtherwise, format: Format): string {
  switch (made.kind) {
    case 'share':
      return `planned ${format.percent(made.planned, 3)}, made ${format.percent(made.made, 3)}`
    case 'line-out':
      return `planned ${format.percent(made.planned, 3)}, never weighed: take the line out`
    case 'step-out':
      return 'left out: take the step out'
    case 'unplanned':
      return `not in the formula: ${format.percent(made.share, 3)} went in (${made.reason})${made.materialId === undefined ? '; choose its material then' : ''}`
    case 'step': {
      const { label, unit } = stepWords[made.field]
      const was = made.planned === undefined ? 'nothing planned' : `planned ${format.number(made.planned)} ${unit}`
      return `${label}: ${was}, was ${format.number(made.made)} ${unit}`
    }
  }
}

const stepWords: Readonly<Record<Extract<MadeOtherwise, { kind: 'step' }>['field'], { label: string; unit: string }>> =
  {
    minutes: { label: 'time', unit: 'min' },
    holdMinutes: { label: 'time held', unit: 'min' },
    hours: { label: 'rest', unit: 'h' },
    targetC: { label: 'temperature', unit: '°C' },
    bothAtLeastC: { label: 'the cooler of the two', unit: '°C' },
    maxDifferenceC: { label: 'apart', unit: '°C' },
    rpm: { label: 'speed', unit: 'rpm' },
  }
