import './ladder.css'
import { useId, useRef, useState } from 'preact/hooks'
import { useFormat } from '../../app/format'
import { latePart } from '../../app/late-part'
import { totalsOf } from '../../batch/progress'
import { Button } from '../../parts/button'
import { Meter } from '../../parts/meter'
import { PhaseHead } from '../../parts/rung'
import { useBeforeFrame } from '../../parts/use-before-frame'
import { type LadderPhase, ladderOf } from './ladder-of'
import { useRun } from './run-context'
import { Rungs } from './rungs'

const CupsWaiting = latePart(() => import('./cups-waiting'), 'CupsWaiting')

/** Phases and their steps, actual beside target, how much is in; the way to add what was not planned. */
export function Ladder() {
  return (
    <nav class="ladder" aria-label="Steps of the batch">
      <LadderSteps />
      <LadderFoot />
    </nav>
  )
}

function LadderSteps() {
  const run = useRun()
  const phases = ladderOf(run, useFormat())
  const steps = useRef<HTMLDivElement>(null)
  const stepId = run.stepId.value
  useBeforeFrame(() => {
    steps.current?.querySelector('.rung-now, .rung-over, .rung:is(.rung-looking)')?.scrollIntoView({ block: 'nearest' })
  }, [stepId])
  return (
    <div class="ladder-steps" ref={steps}>
      {phases.map((phase) => (
        <Phase key={phase.letter} phase={phase} />
      ))}
      <CupsWaiting />
    </div>
  )
}

function Phase({ phase }: { phase: LadderPhase }) {
  const id = useId()
  // Null follows the step in hand: its phase is open, the others are folded.
  const [chosen, setChosen] = useState<boolean | null>(null)
  const open = chosen ?? phase.inHand
  return (
    <>
      <PhaseHead
        letter={phase.letter.length === 1 ? phase.letter : undefined}
        icon={phase.letter.length === 1 ? undefined : 'flag'}
        name={phase.name}
        value={phase.value}
        state={phase.state}
        open={open}
        controls={open ? id : undefined}
        onPress={() => setChosen(!open)}
      />
      {open && (
        <div id={id}>
          <Rungs label={phase.name} rungs={phase.rungs} />
        </div>
      )}
    </>
  )
}

function LadderFoot() {
  const run = useRun()
  const format = useFormat()
  const totals = totalsOf(run.handle.view.value.state)
  return (
    <div class="ladder-foot">
      <div class="ladder-acts">
        <Button
          size="small"
          label="Add something not in the plan"
          onPress={() => {
            run.sheet.value = { name: 'unplanned' }
          }}
        />
        <Button
          size="small"
          label="More"
          onPress={() => {
            run.sheet.value = { name: 'more' }
          }}
        />
      </div>
      <Meter
        label="In so far"
        value={format.mass(totals.inUg)}
        of={`of ${format.massWithUnit(totals.totalUg)}`}
        fraction={totals.totalUg === 0 ? 0 : totals.inUg / totals.totalUg}
      />
    </div>
  )
}
