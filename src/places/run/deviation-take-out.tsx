import { useLayoutEffect } from 'preact/hooks'
import { useFormat } from '../../app/format'
import type { Micrograms } from '../../trade/mass'
import { errorOf } from './cards/use-step'
import { takenOutUg } from './deviation-model'
import { Pad } from './hand'
import { useRun } from './run-context'
import { TypedField } from './typed-field'

const ownFields = ['again', 'takeOut']

/** How much came out of the cup, or what the balance shows now. */
export function TakeOut({ byUg }: { byUg: Micrograms }) {
  const run = useRun()
  const format = useFormat()
  const stepUg = run.planned.value?.line?.balance.stepUg
  useLayoutEffect(() => {
    run.activeField.value = 'again'
    // The pad goes back to the reading, unless another step has taken it meanwhile.
    return () => {
      if (ownFields.includes(run.activeField.peek())) run.activeField.value = 'reading'
    }
  }, [])
  const out = takenOutUg(run.handle.view.value.state, run.stepId.value ?? '', run.draft.value, run.reckoner)
  const settle = () => void run.settle()
  return (
    <div class="ways-out">
      <div class="ways-fields">
        <TypedField name="again" label="Reads now" unit="g" error={errorOf(out)} onEnter={settle} />
        <TypedField
          name="takeOut"
          label="or taken out"
          unit="g"
          placeholder={format.mass(byUg, stepUg)}
          onEnter={settle}
        />
      </div>
      <Pad onEnter={settle} />
    </div>
  )
}
