import { useId, useState } from 'preact/hooks'
import { useFormat } from '../../app/format'
import type { BatchState } from '../../batch/state'
import { nameOfVessel } from '../../batch/vessel-name'
import { PhaseHead } from '../../parts/rung'
import { massIn } from '../../trade/ledger'
import { useRun } from './run-context'

/** Cups that are weighed and wait to be tipped in, each with where it goes. */
export function CupsWaiting() {
  const run = useRun()
  const format = useFormat()
  const id = useId()
  const [open, setOpen] = useState(false)
  const { state } = run.handle.view.value
  const cups = cupsWaiting(state)
  if (cups.length === 0) return null
  return (
    <>
      <PhaseHead
        icon="cup-soda"
        name="Cups waiting"
        value={cups.length === 1 ? '1 cup is weighed' : `${cups.length} cups are weighed`}
        state="to-do"
        open={open}
        controls={open ? id : undefined}
        onPress={() => setOpen(!open)}
      />
      {open && (
        <ul class="ladder-cups" id={id}>
          {cups.map((cup) => (
            <li key={cup.id}>
              <span class="ladder-cup">
                {cup.name}
                {cup.holds && `, ${cup.holds}`}
              </span>
              <span class="ladder-cup-fact">
                {format.massWithUnit(cup.massUg)} for {nameOfVessel(state, cup.into)}
              </span>
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

interface WaitingCup {
  readonly id: string
  readonly name: string
  readonly holds: string | undefined
  readonly massUg: number
  readonly into: string
}

function cupsWaiting(state: BatchState): readonly WaitingCup[] {
  return state.plan.steps.flatMap(({ step }) => {
    if (step.kind !== 'charge' || state.vessels.get(step.cup)?.emptiedInto !== undefined) return []
    const massUg = massIn(state.ledger, step.cup)
    if (massUg === 0) return []
    const cup = state.plan.vessels.get(step.cup)
    return [{ id: step.cup, name: cup?.name ?? step.cup, holds: cup?.holds, massUg, into: step.vessel }]
  })
}
