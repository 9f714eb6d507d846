import type { VNode } from 'preact'
import { AlarmBar } from '../parts/bars'
import { useApp } from './app'
import { useFormat } from './format'

/** The first bell that rings; the others wait behind it. */
export function Bell(): VNode | null {
  const app = useApp()
  const format = useFormat()
  const ringing = app.bells.ringing.value
  const first = ringing[0]
  if (!first) return null
  const more = ringing.length > 1 ? `, and ${ringing.length - 1} more` : ''
  return (
    <AlarmBar
      text={`${first.batchName}: ${first.label} is over${more}`}
      late={`${format.duration(app.nowMs.value - first.deadlineAtMs)} late`}
      onStop={() => void app.bells.stop(first)}
    />
  )
}
