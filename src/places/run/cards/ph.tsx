import { useEffect, useMemo, useState } from 'preact/hooks'
import { earlierBatches } from '../../../app/earlier-batches'
import { adviceFor, type EarlierBatch } from '../../../batch/adjusting'
import type { Check } from '../../../batch/formula'
import type { KindOf } from '../../../batch/step'
import { useRun } from '../run-context'
import { AdjustWeigh } from './adjust-weigh'
import { PhOverview } from './ph-overview'
import { PhRead } from './ph-read'
import { useAdjust } from './use-adjust'
import { useStep } from './use-step'

/** Bringing the pH into its window: the proposal and the curve, a portion, a reading, in turn. */
export function PhCard({ step, check }: { step: KindOf<'adjust'>; check: Check }) {
  const { state, run } = useStep(step)
  const history = useEarlier(check.id)
  const lotId = run.draft.value.fields.lot || undefined
  const adjusting = useMemo(() => adviceFor(state, step.id, history, lotId), [state, step.id, history, lotId])
  const refused = adjusting?.advice.ok === false ? adjusting.advice.refusal.code : null
  const tools = useAdjust(
    step,
    check,
    refused === 'PH_NOT_READ' || refused === 'PH_NOT_READ_SINCE' || adjusting?.readings.length === 0
      ? 'read'
      : 'overview',
  )
  if (adjusting === null) return null
  const advice = adjusting.advice.ok ? adjusting.advice.value : null
  switch (tools.view) {
    case 'read':
      return <PhRead step={step} check={check} tools={tools} adjusting={adjusting} />
    case 'weigh':
      return (
        <AdjustWeigh
          step={step}
          check={check}
          tools={tools}
          proposedUg={advice?.do === 'add' ? advice.doseUg : undefined}
        />
      )
    case 'overview':
      return <PhOverview step={step} tools={tools} adjusting={adjusting} />
  }
}

/** Read once when the card comes up; until then the advice goes by this batch alone. */
function useEarlier(check: string): readonly EarlierBatch[] {
  const { app, handle } = useRun()
  const [earlier, setEarlier] = useState<readonly EarlierBatch[]>([])
  useEffect(() => {
    let here = true
    void earlierBatches(app, handle.view.peek().state, check).then((found) => here && setEarlier(found))
    return () => {
      here = false
    }
  }, [check])
  return earlier
}
