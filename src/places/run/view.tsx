import './run.css'
import { useEffect, useState } from 'preact/hooks'
import { type App, useApp } from '../../app/app'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { EmptyState } from '../../parts/empty'
import { warmCards } from './cards/card-of'
import { warmDeviation } from './deviation-place'
import { createRunModel } from './model'
import { RunProvider } from './run-context'
import type { RunModel } from './run-model'
import { RunScreen } from './screen'
import { warmSheets } from './sheets/sheet-of'
import { keptStep } from './step-in-hand'

/** Inside a batch: the ladder of its steps, the step in hand, and what the hand needs for it. */
export function RunPlace() {
  const app = useApp()
  const route = app.route.value
  const found = useRunModel(app, route.place === 'run' ? route.batch : '')
  if (found === 'opening') return <main class="run-opening" aria-busy="true" />
  if (found === 'none')
    return (
      <main class="run-opening">
        <EmptyState
          title="There is no such batch on this tablet"
          text="It may stand on another tablet, or its address was cut short. The batches in hand are on the bench."
          actions={<Button kind="filled" label="To the bench" href={addressOf({ place: 'bench' })} />}
        />
      </main>
    )
  return (
    <RunProvider value={found}>
      <RunScreen />
    </RunProvider>
  )
}

function useRunModel(app: App, batchId: string): RunModel | 'opening' | 'none' {
  const [found, setFound] = useState<RunModel | 'opening' | 'none'>('opening')
  useEffect(() => {
    const made: RunModel[] = []
    let here = true
    setFound('opening')
    const opened = Promise.all([app.batches.open(batchId), keptStep(app.drafts, batchId)])
    void opened.then(([handle, lastStep]) => {
      if (!here) return
      if (handle === null) return setFound('none')
      const model = createRunModel(app, handle, { lastStep })
      made.push(model)
      setFound(model)
      warm()
    })
    return () => {
      here = false
      for (const model of made) model.dispose()
    }
  }, [app, batchId])
  return found
}

/** What the first screen does without is fetched right after it: cards, the ways on, the sheets. */
function warm(): void {
  void warmCards()
  void warmDeviation()
  void warmSheets()
}
