import './forewarning.css'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { useFormat } from '../../../app/format'
import { forewarn } from '../../../batch/forewarn'
import type { OnHand } from '../../../batch/remedy-limits'
import { Notice } from '../../../parts/notice'
import { useRun } from '../run-context'
import { wayOut } from '../way-words'
import { lotInUse } from '../weigh-model'

/** Under a reading that is past its band, before Record: what the cheapest way out would be. Nothing is written for it. */
export function Forewarning() {
  const run = useRun()
  const format = useFormat()
  const { app } = run
  const { state } = run.handle.view.value
  const [onHand, setOnHand] = useState<OnHand>(null)
  useEffect(() => {
    void app.catalogue.onHand().then(setOnHand)
  }, [app])
  const net = run.net.value
  const step = run.stepId.value
  const draft = run.draft.value
  const offer = useMemo(() => {
    if (net.kind !== 'net' || step === null) return null
    const lot = lotInUse(state, step, draft)
    const checkedBy = draft.fields.checkedBy
    const named = { ...(lot === undefined ? {} : { lot }), ...(checkedBy ? { checkedBy } : {}) }
    return forewarn(state, { step, reading: net.reading, ...named }, app.clock.nowMs(), onHand)
  }, [state, step, net, draft, onHand, app])
  const place = useRef<HTMLDivElement>(null)
  // On a phone the card scrolls behind the pad.
  useEffect(() => place.current?.scrollIntoView({ block: 'nearest' }), [offer === null])
  if (offer === null) return null
  return (
    <div class="forewarning" ref={place}>
      <Notice kind="over" title={wayOut(offer, state, format)} live />
    </div>
  )
}
