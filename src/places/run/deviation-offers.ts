import { useEffect, useMemo, useState } from 'preact/hooks'
import type { App } from '../../app/app'
import { needsSolver, type RemedyOffer, remediesFor, remediesWithin } from '../../batch/deviation'
import type { BatchState } from '../../batch/state'
import type { RunModel } from './run-model'

/** The ways on as they are now: with what the shelves hold, and with limits over several lines kept. */
export async function offersNow(app: App, state: BatchState, deviation: string): Promise<readonly RemedyOffer[]> {
  const onHand = await app.catalogue.onHand()
  return needsSolver(state, onHand) ? remediesWithin(state, deviation, onHand) : remediesFor(state, deviation, onHand)
}

/** The same for the screen; until the shelves have been read, the ways on that they do not bear on. */
export function useOffers(run: RunModel): readonly RemedyOffer[] {
  const { app } = run
  const { state } = run.handle.view.value
  const deviation = run.deviation.value?.id ?? ''
  const [known, setKnown] = useState<{ of: BatchState; offers: readonly RemedyOffer[] } | null>(null)
  const first = useMemo(() => remediesFor(state, deviation), [state, deviation])
  useEffect(() => {
    let here = true
    void offersNow(app, state, deviation).then((offers) => {
      if (here) setKnown({ of: state, offers })
    })
    return () => {
      here = false
    }
  }, [app, state, deviation])
  return known?.of === state ? known.offers : first
}
