import { weighingOfEntry } from '../../../batch/correct-lot'
import { wordsOf } from '../../../batch/entry-words'
import { Button } from '../../../parts/button'
import { useRun } from '../run-context'
import { useSay } from '../use-say'
import { ReasonSheet } from './reason-sheet'

/** A single line through a wrong entry, which stays legible. */
export function StrikeSheet({ entry, onClose }: { entry: string; onClose: () => void }) {
  const run = useRun()
  const say = useSay()
  const found = run.handle.view.value.state.entries.find(({ event }) => event.id === entry)
  const isWeighing = weighingOfEntry(run.handle.view.value.state, entry) !== undefined
  return (
    <ReasonSheet
      name={`strike:${entry}`}
      title="Strike out"
      reasons={['mistyped', 'read wrongly', 'entered for the wrong line', 'did not happen']}
      label="Strike it out"
      intentionOf={(reason) => ({ do: 'strike', entry, reason })}
      onClose={onClose}
    >
      {found && <p class="sheet-quote">{wordsOf(found.event, say)}</p>}
      {isWeighing && (
        <Button
          icon="package"
          label="The mass is right, the lot is not"
          sub="correct the lot alone"
          onPress={() => {
            run.sheet.value = { name: 'correct-lot', about: entry }
          }}
          full
        />
      )}
      <p>This corrects the record, not the act: what is in the vessel stays in the vessel.</p>
    </ReasonSheet>
  )
}
