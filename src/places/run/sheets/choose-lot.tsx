import { useEffect, useState } from 'preact/hooks'
import { useFormat } from '../../../app/format'
import type { Lot } from '../../../batch/catalogue'
import { Row } from '../../../parts/choice'
import { Notice } from '../../../parts/notice'
import { Sheet } from '../../../parts/sheet'
import type { Micrograms } from '../../../trade/mass'
import { type LotChoice, type LotTrouble, lotChoices } from '../lot-choices'
import { useRun } from '../run-context'
import { lotInUse } from '../weigh-model'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'

/** Which lot this weighing comes from: the oldest usable first, what is called out after them. */
export function ChooseLotSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const format = useFormat()
  const draft = useSheetDraft('lot', onClose)
  const onHand = useOnHand()
  const { state } = run.handle.view.value
  const planned = run.planned.value
  const line = planned?.line
  if (!planned || !line) return null
  const neededUg = run.weighing.value?.leftUg ?? 0
  const lots = lotsOf(line.lots, [...run.app.catalogue.lots.value.values()], line.material.id)
  const today = new Date(run.app.nowMs.value).toISOString().slice(0, 10)
  const choices = lotChoices(lots, onHand, neededUg, today)
  const inUse = lotInUse(state, planned.id, run.draft.value)
  const take = async (lot: Lot) => {
    const known = state.lotsOfLine.get(line.line.id) ?? []
    const isNew = !known.includes(lot.id)
    const opened = line.lots.some(({ id }) => id === lot.id) ? [] : [lot]
    const lots = [...known, lot.id]
    if (isNew && !(await draft.send({ do: 'choose-lots', line: line.line.id, lots, opened }))) return
    run.type('lot', lot.id)
    onClose()
  }
  return (
    <Sheet title={`Lot of ${line.material.name}`} onClose={onClose}>
      {draft.refused && <Notice kind="over" title={draft.refused} live />}
      {choices.length === 0 && <p>No lot of this material is known. Lots are written down under Materials.</p>}
      <div>
        {choices.map((choice) => (
          <Row
            key={choice.lot.id}
            icon={choice.lot.id === inUse ? 'check' : choice.trouble === null ? 'circle' : 'triangle-alert'}
            label={choice.lot.id === inUse ? `${choice.lot.code}, in use` : choice.lot.code}
            sub={lotWords(choice, format.date)}
            value={choice.onHandUg === null ? '' : format.massWithUnit(choice.onHandUg)}
            onPress={() => void take(choice.lot)}
          />
        ))}
      </div>
      <p>A lot that runs out half-way: record what is in, then take the next lot for the rest.</p>
    </Sheet>
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
