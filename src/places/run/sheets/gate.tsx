import { useFormat } from '../../../app/format'
import { gateWords } from '../../../app/refusals'
import type { Gate } from '../../../batch/gate'
import { useRun } from '../run-context'
import { GateCure } from './gate-cure'
import { ReasonSheet } from './reason-sheet'

/** A closed step: give what is missing, or go on with a reason that is recorded. */
export function GateSheet({ gate, onClose }: { gate: Gate; onClose: () => void }) {
  const run = useRun()
  const { title, text } = gateWords(gate, run.handle.view.value.state, useFormat())
  const step = run.stepId.value ?? ''
  return (
    <ReasonSheet
      name={`gate:${step}:${gate.key}`}
      title={title}
      reasons={reasonsFor(gate)}
      label="Go on"
      intentionOf={(reason) => ({ do: 'pass-gate', step, gate: gate.key, detail: `${title}. ${text}`, reason })}
      onClose={onClose}
    >
      <p>{text}</p>
      <GateCure gate={gate} onClose={onClose} />
    </ReasonSheet>
  )
}

function reasonsFor(gate: Gate): readonly string[] {
  switch (gate.code) {
    case 'ORDER':
      return ['order does not matter here', 'done, not written down yet', 'trial batch']
    case 'LOT_EXPIRED':
    case 'LOT_QUARANTINED':
      return ['retested and good', 'trial batch', 'no other lot']
    case 'TIMER_RUNNING':
    case 'TIMER_NOT_STARTED':
      return ['looks finished', 'timed otherwise', 'trial batch']
    default:
      return ['judged harmless', 'measured otherwise', 'trial batch']
  }
}
