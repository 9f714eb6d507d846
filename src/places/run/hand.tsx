import './hand.css'
import { useEffect, useRef } from 'preact/hooks'
import { NumberPad } from '../../parts/pad'
import { useRun } from './run-context'
import { VesselShelf } from './vessel-shelf'
import { WeighRecord } from './weigh-record'

/** The column of the writing hand while weighing: the vessels, the pad, Record. */
export function Hand() {
  const run = useRun()
  return (
    <aside class="run-hand" aria-label="Vessels and pad">
      <VesselShelf />
      <Pad onEnter={() => void run.record()} />
      <WeighRecord />
    </aside>
  )
}

/**
 * The pad types into the active field of the step in hand. A press leaves the focus where it was: a key that had it
 * would take the next Enter for itself.
 */
export function Pad({ onEnter }: { onEnter: () => void }) {
  const run = useRun()
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const keep = (event: MouseEvent) => event.preventDefault()
    const pad = place.current
    pad?.addEventListener('mousedown', keep)
    return () => pad?.removeEventListener('mousedown', keep)
  }, [])
  const field = run.activeField.value
  return (
    <div class="pad-place" ref={place}>
      <NumberPad
        value={run.draft.value.fields[field] ?? ''}
        onChange={(text) => run.type(field, text)}
        decimalMark={run.app.settings.decimalMark.value}
        onEnter={onEnter}
        listen={run.sheet.value === null}
      />
    </div>
  )
}
