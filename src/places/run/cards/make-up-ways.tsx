import type { Gate } from '../../../batch/gate'
import type { MakeUp } from '../../../batch/make-up'
import { Button } from '../../../parts/button'
import { Notice } from '../../../parts/notice'
import { useRun } from '../run-context'
import type { OpenSheet } from '../run-model'

interface LossAskedProps {
  makeup: MakeUp
  gate: Gate
  water: string
  mass: (massUg: number) => string
}

/** A reading that cannot be as the books stand: what it may come from, and a way on for each. */
export function LossAsked({ makeup, gate, water, mass }: LossAskedProps) {
  const run = useRun()
  const { vessel, aboveUg, lossUg } = makeup
  const open = (sheet: OpenSheet) => () => {
    run.sheet.value = sheet
  }
  const tare = <Button icon="scale" label="Weigh the tare again" onPress={open({ name: 'tare', about: vessel })} full />
  if (aboveUg === 0)
    return (
      <Notice kind="over" title={`${mass(lossUg)} is gone, more than there was of ${water.toLowerCase()}`} live>
        <p>Something was spilled or taken out and not written down, the reading is net, or the tare is wrong.</p>
        <div class="make-up-ways">
          <Button icon="droplets" label="Write down a spill" onPress={open({ name: 'spill' })} full />
          {tare}
        </div>
      </Notice>
    )
  const writeDown = () => {
    const draft = run.drafts.of('sheet:unplanned').fields
    if (!draft.mass) run.drafts.setField('sheet:unplanned', 'mass', mass(aboveUg).replace(/[^\d.,]/g, ''))
    run.drafts.setField('sheet:unplanned', 'vessel', vessel)
    run.sheet.value = { name: 'unplanned' }
  }
  return (
    <Notice kind="over" title={`${mass(aboveUg)} more than the books know of`} live>
      <p>Nothing grows in a beaker: something went in that was not written down, or the tare is wrong.</p>
      <div class="make-up-ways">
        <Button icon="plus" label="Write down what went in" onPress={writeDown} full />
        {tare}
        <Button icon="flag" label="Go on, say why" onPress={open({ name: 'gate', gate })} full />
      </div>
    </Notice>
  )
}
