import { useEffect, useRef, useState } from 'preact/hooks'
import { isDone } from '../../batch/progress'
import { classes } from '../../parts/classes'
import { useHardwareKeys } from '../../parts/use-hardware-keys'
import { CardOf } from './cards/card-of'
import { DeviationPlace } from './deviation-place'
import { Hand } from './hand'
import { Ladder } from './ladder'
import { useRun } from './run-context'
import { SheetOf } from './sheets/sheet-of'
import { StepsBar } from './steps-bar'
import { Strip } from './strip'
import { useFocusOnStep } from './use-focus-on-step'
import { useKeepSeen } from './use-keep-seen'

/**
 * The three columns of a run: where we are, what to read, what the hand does. When the app starts in the middle of a run,
 * the step in hand stands a frame before the ladder, which is the longest to draw.
 */
export function RunScreen({ stepFirst }: { stepFirst: boolean }) {
  const run = useRun()
  const [isWhole, setWhole] = useState(!stepFirst)
  useEffect(() => setWhole(true), [])
  const eye = useRef<HTMLDivElement>(null)
  useFocusOnStep(eye, run.stepId.value)
  useKeepSeen(run.stepId.value)
  useStepKeys()
  const planned = run.planned.value
  const isOver = run.deviation.value !== null
  const isWeighing = planned?.step.kind === 'weigh' && !isDone(run.handle.view.value.state, planned.id)
  return (
    <div class={classes('run', isOver ? 'run-over' : isWeighing ? 'run-weigh' : 'run-process')}>
      <Strip />
      <StepsBar />
      <div class="run-map">{isWhole && <Ladder />}</div>
      <main class="run-eye" data-place="run" ref={eye}>
        {isOver ? <DeviationPlace /> : <CardOf />}
      </main>
      {isWeighing && !isOver && <Hand />}
      <SheetOf />
    </div>
  )
}

/** N and P go on and back, U takes back what was just recorded; digits belong to the pad. */
function useStepKeys(): void {
  const run = useRun()
  useHardwareKeys({ onKey: (key) => stepKey(run, key), onPaste: () => {} }, run.sheet.value === null)
}

function stepKey(run: ReturnType<typeof useRun>, key: string): boolean {
  switch (key.toLowerCase()) {
    case 'n':
      run.step(1)
      return true
    case 'p':
      run.step(-1)
      return true
    case 'u': {
      const done = run.app.justDone.value
      if (done === null) return false
      void done.undo()
      return true
    }
    default:
      return false
  }
}
