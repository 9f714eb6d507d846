import { SelectField } from '../../parts/form'
import { Sheet } from '../../parts/sheet'
import type { StartProps } from './shared'

interface PeopleSheetProps extends StartProps {
  onClose: () => void
}

/** Who weighs and who checks: two people, or one alone. */
export const PeopleSheet = ({ model, house, setUp, onClose }: PeopleSheetProps) => {
  const { performs, checks } = setUp.header.people
  const options = house.people.map(({ id, initials, name }) => ({ value: id, label: `${initials}, ${name}` }))
  const wantsCheck = setUp.revision.procedure.some(({ secondPerson }) => secondPerson)
  return (
    <Sheet title="People" onClose={onClose} closeLabel="Done">
      <SelectField
        label="Weighs"
        value={performs.id}
        options={options}
        onChange={(id) => model.change({ performs: id })}
      />
      <SelectField
        label="Checks"
        hint={
          wantsCheck
            ? 'Some weighings of this formula are checked by a second person.'
            : 'This formula asks for no second person.'
        }
        value={checks?.id ?? ''}
        options={[{ value: '', label: 'Nobody' }, ...options.filter(({ value }) => value !== performs.id)]}
        onChange={(id) => model.change({ checks: id })}
      />
    </Sheet>
  )
}
