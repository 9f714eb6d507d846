import { Button } from '../parts/button'
import { Sheet } from '../parts/sheet'
import { useApp } from './app'
import { addressOf } from './routes'

/** Who is at this tablet: one tap. */
export function PersonSheet({ onClose }: { onClose: () => void }) {
  const app = useApp()
  const people = [...app.catalogue.people.value.values()].filter((person) => !person.archived)
  const choose = (id: string): void => {
    void app.settings.change({ person: id })
    onClose()
  }
  return (
    <Sheet title="Who is at this tablet?" onClose={onClose}>
      {people.length === 0 && <p>Nobody is known yet. Add the people of your bench in Setup.</p>}
      <div class="person-choices">
        {people.map((person) => (
          <Button
            key={person.id}
            kind={person.id === app.settings.value.value.person ? 'filled' : 'outline'}
            label={person.initials}
            sub={person.name}
            onPress={() => choose(person.id)}
          />
        ))}
      </div>
      <a class="person-setup" href={addressOf({ place: 'setup', section: 'people' })} onClick={onClose}>
        Add or change people in Setup
      </a>
    </Sheet>
  )
}
