import './bench.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import { latePart } from '../../app/late-part'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { BatchCard } from './batch-card'
import { createBenchModel } from './model'
import { callName } from './order'

/** What is due today comes right after the batches. */
const ChecksToday = latePart(() => import('./checks-today'), 'ChecksToday')

/** What stands here while nothing is in hand. */
const BenchEmpty = latePart(() => import('./bench-empty'), 'BenchEmpty')

/** Home: what is in hand, the most urgent first, what is due today, and a way to begin. */
export function BenchPlace() {
  const app = useApp()
  const model = useMemo(() => createBenchModel(app), [app])
  useEffect(() => model.dispose, [model])
  const mood = model.mood.value
  const cards = model.cards.value
  if (mood === 'unknown') return <main class="bench" aria-busy="true" />
  if (mood === 'first') return <BenchEmpty model={model} />
  const batches = cards.map(({ batch }) => batch)
  return (
    <main class="bench">
      <h1 class="visually-hidden">Bench</h1>
      {mood === 'idle' ? (
        <BenchEmpty model={model} />
      ) : (
        <ol class="bench-cards" aria-label="Batches in hand">
          {cards.map((card, index) => (
            <li key={card.batch.id}>
              <BatchCard
                card={card}
                first={index === 0}
                name={callName(card.batch, batches)}
                onGo={() => model.goTo(card)}
              />
            </li>
          ))}
        </ol>
      )}
      <aside class="bench-side" aria-label="Today">
        <ChecksToday />
        <Button
          kind={mood === 'idle' ? 'filled' : 'outline'}
          size="primary"
          icon="plus"
          label="Start a batch"
          href={addressOf({ place: 'start' })}
          class="bench-start"
          full
        />
      </aside>
    </main>
  )
}
