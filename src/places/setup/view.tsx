import './setup.css'
import { useApp } from '../../app/app'
import { addressOf } from '../../app/routes'
import { Icon, type IconName } from '../../parts/icon'
import { About } from './about'
import { Preferences } from './preferences'
import { RegisterSection } from './register-section'
import { Storage } from './storage'
import { Tablet } from './tablet'

const sections: readonly { readonly id: string; readonly name: string; readonly icon: IconName }[] = [
  { id: 'people', name: 'People', icon: 'users' },
  { id: 'balances', name: 'Balances', icon: 'scale' },
  { id: 'vessels', name: 'Vessels', icon: 'beaker' },
  { id: 'preferences', name: 'Preferences', icon: 'sliders' },
  { id: 'storage', name: 'Storage and backup', icon: 'hard-drive' },
  { id: 'tablet', name: 'This tablet', icon: 'bell-ring' },
  { id: 'about', name: 'About and cautions', icon: 'info' },
]

/** People, instruments, preferences, where the data lives, and what the app is not. */
export function SetupPlace() {
  const at = useApp().route.value
  const wanted = at.place === 'setup' ? at.section : undefined
  const here = sections.find(({ id }) => id === wanted) ?? sections[0]
  return (
    <main class="setup">
      <nav class="setup-doors" aria-label="Setup">
        {sections.map(({ id, name, icon }) => (
          <a
            key={id}
            class="setup-door"
            href={addressOf({ place: 'setup', section: id })}
            aria-current={id === here?.id ? 'page' : undefined}
          >
            <Icon name={icon} />
            {name}
          </a>
        ))}
      </nav>
      <div class="setup-main">
        <h1>{here?.name}</h1>
        <Section id={here?.id ?? ''} />
      </div>
    </main>
  )
}

function Section({ id }: { id: string }) {
  switch (id) {
    case 'balances':
      return <RegisterSection key={id} register="balance" />
    case 'vessels':
      return <RegisterSection key={id} register="vessel" />
    case 'preferences':
      return <Preferences />
    case 'storage':
      return <Storage />
    case 'tablet':
      return <Tablet />
    case 'about':
      return <About />
    default:
      return <RegisterSection key="people" register="person" />
  }
}
