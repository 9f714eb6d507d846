import { Button } from '../../../parts/button'
import { Notice } from '../../../parts/notice'
import { Sheet } from '../../../parts/sheet'
import { peopleOf } from '../people'
import { useRun } from '../run-context'
import type { SheetPartProps } from './sheet-part'
import { useSheetDraft } from './use-sheet-draft'

/** Who goes on: one tap. What is recorded from then on carries their initials. */
export function HandOverSheet({ onClose }: SheetPartProps) {
  const run = useRun()
  const { state } = run.handle.view.value
  const draft = useSheetDraft('hand-over', onClose)
  const others = peopleOf(state, run.app.catalogue.people.value).filter(({ id }) => id !== state.person)
  const handTo = async (id: string) => {
    if (await draft.send({ do: 'hand-over', to: id })) await run.app.settings.change({ person: id })
  }
  return (
    <Sheet title="Hand over to" onClose={onClose}>
      {draft.refused && <Notice kind="over" title={draft.refused} live />}
      {others.length === 0 && <p>Nobody else is known. People are added in Setup.</p>}
      <div class="sheet-people">
        {others.map((person) => (
          <Button
            key={person.id}
            kind="outline"
            label={person.initials}
            sub={person.name}
            onPress={() => void handTo(person.id)}
          />
        ))}
      </div>
    </Sheet>
  )
}
