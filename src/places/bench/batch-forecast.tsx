import { useEffect, useMemo, useState } from 'preact/hooks'
import { type BatchHandle, useApp } from '../../app/app'
import { clockRange, minutesLeft } from '../../app/forecast-words'
import { useFormat } from '../../app/format'
import { useForecasts } from '../../app/use-forecasts'
import type { BatchSummary } from '../../batch/summary'

/** A thermometer that nobody has read for so long tells nothing of now. */
const recentMs = 3 * 3_600_000

/** When the next vessel of a batch gets there. Its log is read after the bench stands, and only where it is young. */
export function BatchForecast({ batch }: { batch: BatchSummary }) {
  const app = useApp()
  const isRecent = batch.stage === 'in-hand' && app.nowMs.value - batch.touchedAtMs < recentMs
  return isRecent ? <RecentForecast id={batch.id} /> : null
}

function RecentForecast({ id }: { id: string }) {
  const app = useApp()
  const format = useFormat()
  const forecasts = useForecasts()
  const [handle, setHandle] = useState<BatchHandle | null>(null)
  useEffect(() => {
    let here = true
    void app.batches.open(id).then((found) => here && setHandle(found))
    return () => {
      here = false
    }
  }, [id])
  const state = handle?.view.value.state
  const told = useMemo(() => (state ? forecasts?.soonestHere(state) : undefined), [forecasts, state])
  if (told === undefined) return null
  const left = minutesLeft(told.reach, app.nowMs.value)
  return (
    <p class="batch-timer">
      <span class="batch-timer-name">{`${format.number(told.course.targetC)} °C ${left === null ? 'by' : 'in'}`}</span>
      <span class="batch-timer-big">{left === null ? 'now' : `${left} min`}</span>
      <span class="batch-timer-name">{clockRange(told.reach, format.time)}</span>
    </p>
  )
}
