import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { type Refusal, sentenceOf } from '../../app/refusals'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { EmptyState } from '../../parts/empty'
import { Notice } from '../../parts/notice'
import type { BenchModel } from './model'

/** Nothing in hand: what this is, and how to begin. */
export const BenchEmpty = ({ model }: { model: BenchModel }) => {
  const app = useApp()
  const [loading, setLoading] = useState(false)
  const [refusal, setRefusal] = useState<Refusal | null>(null)
  const load = async () => {
    setLoading(true)
    setRefusal(await app.loadDemonstration())
    setLoading(false)
  }
  const loadOnce = () => {
    if (!loading) void load()
  }
  const notice = refusal && <Notice kind="over" title={sentenceOf(refusal)} live />
  return model.mood.value === 'first' ? (
    <FirstRun loading={loading} onLoad={loadOnce} notice={notice} />
  ) : (
    <Idle loading={loading} onLoad={loadOnce} notice={notice} />
  )
}

interface DemonstrationProps {
  loading: boolean
  onLoad: () => void
  /** Why the demonstration did not come in. */
  notice: ComponentChildren
}

const FirstRun = ({ loading, onLoad, notice }: DemonstrationProps) => (
  <main class="bench-first">
    <h1 class="visually-hidden">Bench</h1>
    <EmptyState
      title="A bench companion for small batches"
      text="Pannikin turns a formula into targets, walks you through the batch line by line, keeps the timers, says at once when a mass is off and what can be done, and writes the record. It works without a network; everything stays on this tablet."
      actions={
        <>
          <Button
            kind="filled"
            size="primary"
            icon="flask"
            label={loading ? 'Setting it out' : 'Load the demonstration'}
            sub="an invented studio, four formulas"
            disabled={loading}
            onPress={onLoad}
          />
          <Button
            kind="outline"
            size="primary"
            icon="plus"
            label="Start empty"
            sub="enter or import a formula"
            href={addressOf({ place: 'formulas' })}
          />
        </>
      }
    />
    <p class="bench-caveat">
      The demonstration is Quillwort Studio, which does not exist. Its formulas are illustrative and were not tried at a
      bench: do not make them.
    </p>
    {notice}
  </main>
)

const Idle = ({ loading, onLoad, notice }: DemonstrationProps) => {
  const app = useApp()
  return (
    <div class="bench-idle">
      <EmptyState
        title="Nothing in hand"
        text="A batch stands here from its first weighing until it is closed, with its next step and its timers. Finished ones are in Records."
        actions={
          app.hasDemonstration.value ? undefined : (
            <Button
              kind="quiet"
              icon="flask"
              label="Load the demonstration"
              sub="an invented studio, not tried at a bench"
              disabled={loading}
              onPress={onLoad}
            />
          )
        }
      />
      {notice}
    </div>
  )
}
