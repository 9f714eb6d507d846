import { weighingOfEntry } from '../../../batch/correct-lot'
import { wordsOf } from '../../../batch/entry-words'
import { Notice } from '../../../parts/notice'
import { Sheet } from '../../../parts/sheet'
import { useRun } from '../run-context'
import { useSay } from '../use-say'
import { LotRows } from './lot-rows'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'

/** The mass is right and is in; it came from another lot than was written down. */
export function CorrectLotSheet({ entry, onClose }: SheetPartProps & { entry: string }) {
  const run = useRun()
  const say = useSay()
  const draft = useSheetDraft(`lot:${entry}`, onClose)
  const { state } = run.handle.view.value
  const weighing = weighingOfEntry(state, entry)
  const line = weighing && state.plan.lines.get(weighing.body.line)
  if (!weighing || !line) return null
  const inUse = weighing.body.lot
  return (
    <Sheet title={`${line.material.name} came from another lot`} onClose={onClose}>
      {draft.refused && <Notice kind="over" title={draft.refused} live />}
      <p class="sheet-quote">{wordsOf(weighing, say)}</p>
      <LotRows
        line={line}
        neededUg={weighing.body.netUg}
        inUse={inUse}
        onTake={(lot) => {
          if (lot.id === inUse) return onClose()
          const opened = line.lots.some(({ id }) => id === lot.id) ? {} : { opened: lot }
          void draft.send({ do: 'correct-lot', entry, lot: lot.id, ...opened, reason: 'taken from another lot' })
        }}
      />
      <p>Its assay, its expiry and its stock count from now on; what that means is said at once.</p>
    </Sheet>
  )
}
