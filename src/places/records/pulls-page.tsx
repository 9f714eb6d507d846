import './records.css'
import './record.css'
import './stability.css'
import { useApp } from '../../app/app'
import { allBatches, jarAddress, jarParts } from '../../app/jar-address'
import type { JarDue } from '../../app/jars-due'
import { addressOf } from '../../app/routes'
import { useJarsLeft } from '../../app/use-jars-left'
import { type Standing, standingOf } from '../../batch/pulls'
import { Button } from '../../parts/button'
import { EmptyState } from '../../parts/empty'
import { JarLink } from './jar-link'
import { enterWords, openWords } from './stability-words'

const parts: readonly { readonly standing: Standing; readonly title: string }[] = [
  { standing: 'late', title: 'Late' },
  { standing: 'due', title: 'Due' },
  { standing: 'missed', title: 'Missed' },
  { standing: 'to come', title: 'To come' },
]

/** The jars of all batches that are still to be pulled, the most urgent first. */
export function PullsPage() {
  const nowMs = Math.floor(useApp().nowMs.value / 60_000) * 60_000
  const left = useJarsLeft()
  const of = (standing: Standing) => (left ?? []).filter(({ pull }) => standingOf(pull, nowMs) === standing)
  const toPull = of('due').length + of('late').length
  return (
    <main class="stability" aria-busy={left === null || undefined}>
      <div class="record-tools">
        <Button kind="plain" icon="arrow-left" label="Records" href={addressOf({ place: 'records' })} />
        {toPull > 0 && (
          <Button
            kind="filled"
            icon="clipboard-check"
            label={enterWords(toPull)}
            href={jarAddress(allBatches, jarParts.today)}
          />
        )}
      </div>
      <header class="stability-head">
        <h1>Stability pulls</h1>
      </header>
      {left?.length === 0 && (
        <EmptyState
          title="No jars are waiting"
          text="A batch gets its stability plan in its record, under Stability. What is due then stands here and on the bench."
          actions={<Button kind="filled" label="To the records" href={addressOf({ place: 'records' })} />}
        />
      )}
      {parts.map(({ standing, title }) => (
        <Part key={standing} title={title} jars={of(standing)} nowMs={nowMs} />
      ))}
    </main>
  )
}

function Part({ title, jars, nowMs }: { title: string; jars: readonly JarDue[]; nowMs: number }) {
  if (jars.length === 0) return null
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <ul class="jar-list">
        {jars.map(({ batch, pull }) => (
          <li key={`${batch.id} ${pull.id}`}>
            <JarLink
              batch={batch.id}
              pull={pull}
              name={`${batch.shortName}: ${pull.jar}`}
              standing={openWords(pull, nowMs)}
            />
          </li>
        ))}
      </ul>
    </section>
  )
}
