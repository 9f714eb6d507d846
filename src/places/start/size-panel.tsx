import './size-panel.css'
import { useFormat } from '../../app/format'
import { Button } from '../../parts/button'
import { Choice } from '../../parts/choice'
import { Cup } from '../../parts/cup'
import { PillButton } from '../../parts/pill-button'
import type { StartProps, StartSheet } from './shared'
import { nudge, shortMass, sizeChips, sizeText } from './size'
import { SizeField } from './size-field'
import type { VesselRow } from './vessels'

interface SizePanelProps extends StartProps {
  onSheet: (sheet: StartSheet) => void
}

/** How much, in which order of weighing, on what and in what. */
export const SizePanel = ({ model, house, setUp, onSheet }: SizePanelProps) => {
  const format = useFormat()
  const { mode } = model.choice.value
  const sizeUg = model.sizeUg.value
  const set = (newUg: number) => {
    const unit = newUg >= 1e9 ? 'kg' : 'g'
    model.change({ size: sizeText(newUg, unit).replace('.', format.number(0.1).charAt(1)), unit })
  }
  return (
    <section class="start-left" aria-label="Size and vessels">
      <SizeField model={model} />
      <div class="start-nudge">
        <Button icon="minus" label="Less" disabled={sizeUg === null} onPress={() => sizeUg && set(nudge(sizeUg, -1))} />
        <Button icon="plus" label="More" disabled={sizeUg === null} onPress={() => sizeUg && set(nudge(sizeUg, 1))} />
      </div>
      <div class="start-chips">
        {sizeChips(setUp.revision.usualSizeUg).map((chipUg) => (
          <PillButton
            key={chipUg}
            text={shortMass(chipUg, format)}
            selected={chipUg === sizeUg}
            onPress={() => set(chipUg)}
          />
        ))}
      </div>
      <Choice
        label="Weighing"
        value={mode}
        options={[
          { value: 'as-you-go', label: 'As you go' },
          { value: 'weigh-up-first', label: 'Weigh up first' },
        ]}
        onChange={(value) => model.change({ mode: value })}
      />
      <Button
        icon="scale"
        label="Lots, balances"
        sub={balanceNames(setUp.header.balanceOfLine, house.balances)}
        onPress={() => onSheet('lines')}
        full
        class="start-wide-button"
      />
      <button type="button" class="start-vessels" onClick={() => onSheet('vessels')}>
        <span class="start-vessels-title">Vessels, tare in g</span>
        <span class="start-cups">
          {setUp.vessels.slice(0, 3).map((row) => (
            <VesselCup key={row.need.id} row={row} />
          ))}
        </span>
        {setUp.vessels.length > 3 && <span class="start-more">and {setUp.vessels.length - 3} more</span>}
      </button>
    </section>
  )
}

const VesselCup = ({ row: { need, vessel } }: { row: VesselRow }) => {
  const format = useFormat()
  const height = need.kind === 'cup' ? 48 : 68
  return (
    <span class="start-cup">
      <Cup strata={[]} targetUg={0} width={height * 0.98} height={height} />
      <strong>{vessel.name.replace(/ (beaker|cup)$/i, '')}</strong>
      <span class={vessel.tareUg === undefined ? 'start-untared' : ''}>
        {vessel.tareUg === undefined ? 'no tare' : format.mass(vessel.tareUg)}
      </span>
    </span>
  )
}

/** "Balance 2, Balance 1": those in use, the one with most lines first. */
function balanceNames(
  ofLines: readonly { readonly balance: string }[],
  balances: readonly { readonly id: string; readonly name: string }[],
): string {
  const count = (id: string) => ofLines.filter(({ balance }) => balance === id).length
  const used = balances.filter(({ id }) => count(id) > 0).sort((a, b) => count(b.id) - count(a.id))
  return used.length === 0 ? 'no balance yet' : used.map(({ name }) => name).join(', ')
}
