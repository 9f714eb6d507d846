import './records.css'
import './record.css'
import './stability.css'
import './jar-entry.css'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { allBatches, stabilityAddress } from '../../app/jar-address'
import { sentenceOf } from '../../app/refusals'
import { recordSentences } from '../../app/refusals/forms-records'
import { numberSentences } from '../../app/refusals/numbers'
import { sayFrom } from '../../app/refusals/sentences'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { EmptyState } from '../../parts/empty'
import { Mark } from '../../parts/mark'
import { Notice } from '../../parts/notice'
import { NumberPad } from '../../parts/pad'
import { createJarEntry, type JarEntryModel, type OpenJar } from './jar-entry-model'
import type { JarField } from './jar-field'
import type { JarProblem } from './jar-row'
import { JarRowPart } from './jar-row-part'
import { standingWords } from './stability-words'
import { WhenPart } from './when-part'

/** What is read of the jars in hand: one row a jar and measure, from field to field by Enter. */
export function JarEntry({ batch, part }: { batch: string; part: string }) {
  const app = useApp()
  const model = useMemo(() => createJarEntry(app, batch, part), [app])
  useEffect(() => void model.open(), [model])
  const [field, setField] = useState<JarField | null>(null)
  const jars = model.jars.value
  const back = batch === allBatches ? addressOf({ place: 'records', batch: allBatches }) : stabilityAddress(batch)
  return (
    <main class="stability jar-entry" aria-busy={jars === null || undefined}>
      <div class="record-tools">
        <Button kind="plain" icon="arrow-left" label={batch === allBatches ? 'All pulls' : 'Kept jars'} href={back} />
      </div>
      <header class="stability-head">
        <h1>Read the jars</h1>
      </header>
      {jars?.length === 0 && <NothingHere model={model} back={back} />}
      {jars !== null && jars.length > 0 && (
        <div class="jar-entry-sides">
          <Rows model={model} jars={jars} onField={setField} />
          <aside class="jar-entry-pad" aria-label="Number pad">
            <p>{field?.name ?? 'Choose a field, then type.'}</p>
            <NumberPad
              value={field === null ? '' : model.textOf(field.key)}
              onChange={(text) => field && model.set(field.key, text)}
              decimalMark={app.settings.decimalMark.value}
              disabled={field === null}
            />
          </aside>
        </div>
      )}
    </main>
  )
}

interface RowsProps {
  model: JarEntryModel
  jars: readonly OpenJar[]
  onField: (field: JarField | null) => void
}

function Rows({ model, jars, onField }: RowsProps) {
  const form = useRef<HTMLDivElement>(null)
  /** The field after the one in hand; after the last one the button that records. */
  const next = () => {
    const stops = [...(form.current?.querySelectorAll<HTMLElement>('input[type=text], .jar-record') ?? [])]
    const active = document.activeElement
    const at = active instanceof HTMLElement ? stops.indexOf(active) : -1
    stops[at + 1]?.focus()
  }
  return (
    <div class="jar-entry-rows" ref={form}>
      {jars.map((jar) => (
        <Jar key={jar.key} jar={jar} model={model} onField={onField} onEnter={next} />
      ))}
      <WhenPart
        draft={{ when: model.textOf('when'), moment: model.textOf('moment'), reason: model.textOf('reason') }}
        change={(part) => {
          for (const [key, text] of Object.entries(part)) model.set(key, text)
        }}
        wrong={{ moment: wrongAt(model, 'moment'), reason: wrongAt(model, 'reason') }}
      />
      <Answers model={model} />
      <Button
        kind="filled"
        size="primary"
        class="jar-record"
        label={recordLabel(model.filled.value)}
        onPress={() => void model.record()}
        full
      />
    </div>
  )
}

const recordLabel = (filled: number): string =>
  filled === 0 ? 'Record what is read' : filled === 1 ? 'Record 1 jar' : `Record ${filled} jars`

interface JarProps {
  jar: OpenJar
  model: JarEntryModel
  onField: (field: JarField | null) => void
  onEnter: () => void
}

function Jar({ jar, model, onField, onEnter }: JarProps) {
  const format = useFormat()
  const { clock } = useApp()
  const { kind, word } = standingWords(jar.pull, clock.nowMs())
  return (
    <section class="jar-sheet" aria-label={`${jar.code}, ${jar.name}`}>
      <h2>
        <Mark kind={kind} size={24} /> {jar.name}
        <span class="jar-sub">
          {jar.code}, {format.date(jar.pull.dueAtMs)}, {word}
        </span>
      </h2>
      {jar.measures.map((measure) => (
        <JarRowPart
          key={measure.id}
          jar={jar}
          measure={measure}
          model={model}
          format={format}
          wrongAt={(key) => wrongAt(model, key)}
          onField={onField}
          onEnter={onEnter}
        />
      ))}
    </section>
  )
}

/** What became of the pass: what is asked, what was refused, what is written. */
function Answers({ model }: { model: JarEntryModel }) {
  const nothing = wrongAt(model, 'all')
  return (
    <>
      {nothing && <Notice kind="over" title={nothing} live />}
      {model.refused.value.map(({ jar, sentence }) => (
        <Notice key={jar.key} kind="over" title={`${jar.code}, ${jar.name}: ${sentence}`} live />
      ))}
      {model.questions.value.map((question) => (
        <Notice key={question.jar.key} kind="caution" title={sentenceOf(question.refusal)} live>
          <Button kind="filled" label="Yes, record it" onPress={() => void model.answer(question, true)} />
          <Button label="No, leave it out" onPress={() => void model.answer(question, false)} />
        </Notice>
      ))}
      {model.recorded.value.length > 0 && (
        <Notice kind="good" title={`Recorded: ${model.recorded.value.join('; ')}.`} live />
      )}
    </>
  )
}

function NothingHere({ model, back }: { model: JarEntryModel; back: string }) {
  const done = model.recorded.value
  return (
    <EmptyState
      title={done.length > 0 ? 'All jars that were due are read' : 'No jar to read here'}
      text={
        done.length > 0
          ? `Recorded: ${done.join('; ')}.`
          : 'Nothing is due, or this jar is not in the plan of its batch any more.'
      }
      actions={<Button kind="filled" label="To the kept jars" href={back} />}
    />
  )
}

function wrongAt(model: JarEntryModel, key: string): string | undefined {
  const wrong = model.problem.value
  if (wrong?.key !== key) return undefined
  return sayFrom<JarProblem['refusal']>({ ...numberSentences, ...recordSentences }, wrong.refusal)
}
