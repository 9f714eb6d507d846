import { titleOf } from '../../../batch/wording'
import { useRun } from '../run-context'
import { ReasonSheet } from './reason-sheet'
import type { SheetPartProps } from './sheet-part'

export function ParkSheet({ onClose }: SheetPartProps) {
  return (
    <ReasonSheet
      name="park"
      title="Put the batch aside"
      reasons={['overnight', 'waiting for a material', 'called away', 'equipment is needed elsewhere']}
      label="Put it aside"
      intentionOf={(reason) => ({ do: 'park', reason })}
      onClose={onClose}
    >
      <p>Its timers go on. It stands on the bench until it is taken up again.</p>
    </ReasonSheet>
  )
}

export function AbandonSheet({ onClose }: SheetPartProps) {
  return (
    <ReasonSheet
      name="abandon"
      title="Give the batch up"
      reasons={['separated', 'contaminated', 'wrong material', 'only a trial']}
      label="Give it up"
      intentionOf={(reason) => ({ do: 'abandon', reason })}
      onClose={onClose}
    >
      <p>Nothing more can be weighed into it. Everything recorded stays.</p>
    </ReasonSheet>
  )
}

export function LeaveShortSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const step = run.stepId.value ?? ''
  return (
    <ReasonSheet
      name={`short:${step}`}
      title="Leave it short"
      reasons={['no more in stock', 'enough for a trial', 'what is left is spoiled']}
      label="Leave it short"
      intentionOf={(reason) => ({ do: 'leave-short', step, reason })}
      onClose={onClose}
    >
      <p>The line counts as done with what is in, and the batch is that much lighter.</p>
    </ReasonSheet>
  )
}

export function SkipSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const planned = run.planned.value
  if (planned === null) return null
  return (
    <ReasonSheet
      name={`skip:${planned.id}`}
      title={`Skip: ${titleOf(planned.step, run.handle.view.value.state.header)}`}
      reasons={['not needed this time', 'done otherwise', 'cannot be done today']}
      label="Skip it"
      intentionOf={(reason) => ({ do: 'skip-step', step: planned.id, reason })}
      onClose={onClose}
    >
      <p>The record says that it was skipped, and why.</p>
    </ReasonSheet>
  )
}
