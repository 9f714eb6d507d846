import './run.css'
import { useComputed } from '@preact/signals'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { latePart } from '../../app/late-part'
import { warmCards } from './cards/card-of'
import { warmDeviation } from './deviation-place'
import { createRunModel } from './model'
import { openRun, type ReadyRun, takePrepared } from './ready-run'
import { RunProvider } from './run-context'
import { RunScreen } from './screen'
import { warmSheets } from './sheets/sheet-of'

const NoSuchBatch = latePart(() => import('./no-such-batch'), 'NoSuchBatch')

/** Inside a batch: the ladder of its steps, the step in hand, and what the hand needs for it. */
export function RunPlace() {
  const { route } = useApp()
  const batchId = useComputed(() => (route.value.place === 'run' ? route.value.batch : '')).value
  return <RunOf key={batchId} batchId={batchId} />
}

function RunOf({ batchId }: { batchId: string }) {
  const app = useApp()
  const [prepared] = useState(() => takePrepared(app, batchId))
  const [ready, setReady] = useState<ReadyRun | 'opening' | null>(prepared ?? 'opening')
  useEffect(() => {
    if (ready !== 'opening') return
    let here = true
    void openRun(app, batchId).then((found) => here && setReady(found))
    return () => {
      here = false
    }
  }, [])
  if (ready === 'opening') return <main class="run-opening" aria-busy="true" />
  return ready === null ? <NoSuchBatch /> : <Run ready={ready} stepFirst={ready === prepared} />
}

function Run({ ready: { handle, lastStep }, stepFirst }: { ready: ReadyRun; stepFirst: boolean }) {
  const app = useApp()
  const model = useMemo(() => createRunModel(app, handle, { lastStep }), [])
  useEffect(() => {
    void app.calm.then(warm)
    return model.dispose
  }, [])
  return (
    <RunProvider value={model}>
      <RunScreen stepFirst={stepFirst} />
    </RunProvider>
  )
}

/** What the first screen does without is fetched right after it: cards, the ways on, the sheets. */
function warm(): void {
  void warmCards()
  void warmDeviation()
  void warmSheets()
}
