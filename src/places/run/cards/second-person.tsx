import { ReasonChips } from '../../../parts/chips'
import { peopleOf } from '../people'
import { useRun } from '../run-context'

/** Where a step asks for a second pair of eyes: whose they are, before it is recorded. */
export function SecondPerson() {
  const run = useRun()
  const { state } = run.handle.view.value
  if (state.header.people.checks === undefined) return null
  const others = peopleOf(state, run.app.catalogue.people.value).filter(({ id }) => id !== state.person)
  const chosen = others.find(({ id }) => id === run.draft.value.fields.checkedBy)
  return (
    <ReasonChips
      label="Checked by"
      options={others.map(({ initials }) => initials)}
      value={chosen?.initials ?? ''}
      onChange={(initials) => run.type('checkedBy', others.find((person) => person.initials === initials)?.id ?? '')}
    />
  )
}
