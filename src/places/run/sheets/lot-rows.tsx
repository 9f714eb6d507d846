import { useEffect, useState } from 'preact/hooks'
import { useFormat } from '../../../app/format'
import type { Lot } from '../../../batch/catalogue'
import type { PlannedLine } from '../../../batch/plan'
import { Row } from '../../../parts/choice'
import type { Micrograms } from '../../../trade/mass'
import { type LotChoice, type LotTrouble, lotChoices } from '../lot-choices'
import { useRun } from '../run-context'

interface LotRowsProps {
  line: PlannedLine
  neededUg: Micrograms
  inUse: string | undefined
  onTake: (lot: Lot) => void
}

/** The lots of a line's material, each with what speaks against it. */
export function LotRows({ line, neededUg, inUse, onTake }: LotRowsProps) {
  const run = useRun()
  const format = useFormat()
  const onHand = useOnHand()
  const lots = lotsOf(line.lots, [...run.app.catalogue.lots.value.values()], line.material.id)
  const today = new Date(run.app.nowMs.value).toISOString().slice(0, 10)
  const choices = lotChoices(lots, onHand, neededUg, today)
  if (choices.length === 0) return <p>No lot of this material is known. Lots are written down under Materials.</p>
  return (
    <div>
      {choices.map((choice) => (
        <Row
          key={choice.lot.id}
          icon={choice.lot.id === inUse ? 'check' : choice.trouble === null ? 'circle' : 'triangle-alert'}
          label={choice.lot.id === inUse ? `${choice.lot.code}, in use` : choice.lot.code}
          sub={lotWords(choice, format.date)}
          value={choice.onHandUg === null ? '' : format.massWithUnit(choice.onHandUg)}
          onPress={() => onTake(choice.lot)}
        />
      ))}
    </div>
  )
}

function useOnHand(): ReadonlyMap<string, Micrograms> | null {
  const { app } = useRun()
  const [onHand, setOnHand] = useState<ReadonlyMap<string, Micrograms> | null>(null)
  useEffect(() => {
    void app.catalogue.onHand().then(setOnHand)
  }, [app])
  return onHand
}

/** The batch's own lots of the line, and every other of the material. */
function lotsOf(own: readonly Lot[], all: readonly Lot[], materialId: string): readonly Lot[] {
  const lots = new Map(own.map((lot) => [lot.id, lot]))
  for (const lot of all) if (lot.materialId === materialId && !lots.has(lot.id)) lots.set(lot.id, lot)
  return [...lots.values()]
}

const troubles: Readonly<Record<LotTrouble, string>> = {
  expired: 'expired',
  quarantine: 'in quarantine',
  'used-up': 'used up',
  short: 'less than is needed',
}

function lotWords({ lot, trouble }: LotChoice, date: (iso: string) => string): string {
  const parts = [
    trouble === null ? '' : troubles[trouble],
    lot.expires === undefined ? '' : `good to ${date(lot.expires)}`,
    lot.assay === undefined ? '' : `assay ${Math.round(lot.assay * 1000) / 10} %`,
    lot.supplier ?? '',
  ]
  return parts.filter((part) => part !== '').join(' · ')
}
