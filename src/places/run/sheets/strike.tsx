import { wordsOf } from '../../../batch/entry-words'
import { useRun } from '../run-context'
import { useSay } from '../use-say'
import { ReasonSheet } from './reason-sheet'

/** A single line through a wrong entry, which stays legible. */
export function StrikeSheet({ entry, onClose }: { entry: string; onClose: () => void }) {
  const run = useRun()
  const say = useSay()
  const found = run.handle.view.value.state.entries.find(({ event }) => event.id === entry)
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
      <p>This corrects the record, not the act: what is in the vessel stays in the vessel.</p>
    </ReasonSheet>
  )
}
