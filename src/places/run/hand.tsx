import './hand.css'
import type { ComponentChildren } from 'preact'
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

/** The pad types into the active field of the step in hand. */
export function Pad({ onEnter }: { onEnter: () => void }): ComponentChildren {
  const run = useRun()
  const field = run.activeField.value
  return (
    <NumberPad
      value={run.draft.value.fields[field] ?? ''}
      onChange={(text) => run.type(field, text)}
      decimalMark={run.app.settings.decimalMark.value}
      onEnter={onEnter}
      listen={run.sheet.value === null}
    />
  )
}
