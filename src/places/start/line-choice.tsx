import { useFormat } from '../../app/format'
import type { PlannedLine } from '../../batch/plan'
import { Button } from '../../parts/button'
import { Choice, Switch } from '../../parts/choice'
import { Caution } from '../../parts/notice'
import { relativeTolerance } from '../../trade/relative-tolerance'
import { smallestReliableMass } from '../../trade/reliability'
import type { ShelfLot } from './lots'
import { nameOfLine } from './set-up'
import type { StartProps } from './shared'
import { withPremix } from './ways'

interface LineChoiceProps extends StartProps {
  planned: PlannedLine
}

/** One line: which lots in which order, and which balance. */
export const LineChoice = ({ model, house, setUp, planned }: LineChoiceProps) => {
  const format = useFormat()
  const { line, material, targetUg, balance, lots } = planned
  const shelf = setUp.shelves.get(line.id) ?? []
  const premix = setUp.header.premixes?.find((each) => each.line === line.id)
  // Of a pre-mix the lot of the neat material is chosen here; what it is diluted with has its own line.
  const chosen = premix
    ? lots.flatMap(({ madeFrom = [] }) => madeFrom.slice(0, 1).map(({ lot }) => lot))
    : lots.map(({ id }) => id)
  const tolerance = relativeTolerance(targetUg, line.tolerance)
  const toggle = (id: string, on: boolean) => {
    const next = on ? [...chosen, id] : chosen.filter((each) => each !== id)
    model.change((choice) => ({ ...choice, lots: { ...choice.lots, [line.id]: next } }))
  }
  return (
    <>
      <p>
        {format.mass(targetUg, balance.stepUg)} g.{' '}
        <span class="start-quiet">{material.inci.map(({ name }) => name).join(', ')}</span>
      </p>
      {premix && (
        <div class="start-group">
          <p>
            Weighed as a pre-mix, 1 in {premix.oneIn} in {nameOfLine(setUp, premix.into)}, which gives way to it.
          </p>
          <Button label="Weigh it neat instead" size="small" onPress={() => model.change(withPremix(line.id, null))} />
        </div>
      )}
      {material.hazards && <Caution text={material.hazards.caution} />}
      <fieldset class="start-group">
        <legend>Lots, in order of use</legend>
        {shelf.length === 0 && (
          <p class="start-quiet">No lot of it is known. Add one in Materials, or go on: the record will say so.</p>
        )}
        {shelf.map((each) => {
          const place = chosen.indexOf(each.lot.id)
          return (
            <Switch
              key={each.lot.id}
              label={`${place >= 0 && chosen.length > 1 ? `${place + 1}. ` : ''}${each.lot.code}`}
              hint={lotWords(each, format.massWithUnit, format.date)}
              checked={place >= 0}
              onChange={(on) => toggle(each.lot.id, on)}
            />
          )
        })}
      </fieldset>
      <Choice
        label="Weighed on"
        stacked
        value={balance.id}
        options={house.balances.map((each) => {
          const goodFromUg = Math.ceil(smallestReliableMass(each, tolerance, false).blocksBelow)
          return {
            value: each.id,
            label: each.name,
            sub: `${format.massWithUnit(each.stepUg, each.stepUg)} to ${format.massWithUnit(each.capacityUg, 1_000_000)}, good from ${format.massWithUnit(goodFromUg)} for ±${format.percent(tolerance, 1)}`,
          }
        })}
        onChange={(id) => model.change((choice) => ({ ...choice, balances: { ...choice.balances, [line.id]: id } }))}
      />
    </>
  )
}

function lotWords(
  { lot, leftUg, state, daysOver }: ShelfLot,
  mass: (massUg: number) => string,
  date: (iso: string) => string,
): string {
  const until = lot.expires === undefined ? 'no last day' : `until ${date(lot.expires)}`
  const assay = lot.assay === undefined ? '' : `, assay ${Number((lot.assay * 100).toFixed(2))} %`
  const left = `${mass(Math.max(leftUg, 0))} left`
  switch (state) {
    case 'expired':
      return `EXPIRED ${daysOver} ${daysOver === 1 ? 'day' : 'days'} ago, ${left}${assay}`
    case 'quarantine':
      return `IN QUARANTINE, ${until}, ${left}${assay}`
    case 'used-up':
      return `used up, ${until}`
    case 'usable':
      return `${until}, ${left}${assay}`
  }
}
