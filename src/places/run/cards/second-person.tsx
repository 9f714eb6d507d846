import { PillButton } from '../../../parts/pill-button'
import { focusField } from '../focus-field'
import { peopleOf } from '../people'
import { useRun } from '../run-context'

/** Where a step asks for a second pair of eyes: whose they are, before it is recorded. */
export function SecondPerson() {
  const run = useRun()
  const { state } = run.handle.view.value
  if (state.header.people.checks === undefined) return null
  const others = peopleOf(state, run.app.catalogue.people.value).filter(({ id }) => id !== state.person)
  const chosen = run.draft.value.fields.checkedBy
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot set its legend in the line of its chips
    <div class="checker" role="group" aria-label="Checked by">
      <span>Checked by</span>
      {others.map(({ id, initials }) => (
        <PillButton
          key={id}
          text={initials}
          selected={id === chosen}
          onPress={() => {
            run.type('checkedBy', id === chosen ? '' : id)
            focusField('reading')
          }}
        />
      ))}
    </div>
  )
}
