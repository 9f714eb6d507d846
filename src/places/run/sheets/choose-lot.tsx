import type { Lot } from '../../../batch/catalogue'
import { Notice } from '../../../parts/notice'
import { Sheet } from '../../../parts/sheet'
import { useRun } from '../run-context'
import { lotInUse } from '../weigh-model'
import { LotRows } from './lot-rows'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'

/** Which lot this weighing comes from: the oldest usable first, what is called out after them. */
export function ChooseLotSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const draft = useSheetDraft('lot', onClose)
  const { state } = run.handle.view.value
  const planned = run.planned.value
  const line = planned?.line
  if (!planned || !line) return null
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
      <LotRows line={line} neededUg={run.weighing.value?.leftUg ?? 0} inUse={inUse} onTake={(lot) => void take(lot)} />
      <p>A lot that runs out half-way: record what is in, then take the next lot for the rest.</p>
    </Sheet>
  )
}
