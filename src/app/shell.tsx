import './base.css'
import './shell.css'
import { useComputed } from '@preact/signals'
import type { ComponentType, VNode } from 'preact'
import { useState } from 'preact/hooks'
import { Icon, type IconName } from '../parts/icon'
import { useApp } from './app'
import { latePart } from './late-part'
import { addressOf, type Route } from './routes'

/** One component a place; how each is loaded is the composition root's business. */
export type Places = { readonly [P in Route['place']]: ComponentType }

const Above = latePart(() => import('./above'), 'Above')
const PersonSheet = latePart(() => import('./person-sheet'), 'PersonSheet')

/** Places that draw their own strip, because every pixel of height is theirs. */
const ownStrip: ReadonlySet<Route['place']> = new Set(['run', 'start'])

/** The frame round every place: the way to the others, who is here, and what rings. */
export function Shell({ places }: { places: Places }) {
  const { route, bells, heals } = useApp()
  // A run moves its address on with every step; the frame stays as it is.
  const place = useComputed(() => route.value.place).value
  const Place = places[place]
  if (ownStrip.has(place)) return <Place />
  return (
    <div class="frame">
      <Masthead place={place} />
      {bells.ringing.value.length + heals.value.length > 0 && <Above />}
      <Place />
    </div>
  )
}

const doors: readonly {
  readonly place: 'bench' | 'formulas' | 'materials' | 'records' | 'setup'
  readonly name: string
  readonly icon: IconName
}[] = [
  { place: 'bench', name: 'Bench', icon: 'layout-grid' },
  { place: 'formulas', name: 'Formulas', icon: 'book-open' },
  { place: 'materials', name: 'Materials', icon: 'package' },
  { place: 'records', name: 'Records', icon: 'file-text' },
  { place: 'setup', name: 'Setup', icon: 'sliders' },
]

function Masthead({ place }: { place: Route['place'] }): VNode {
  const app = useApp()
  const [choosing, setChoosing] = useState(false)
  const person = app.settings.person.value
  return (
    <header class="masthead">
      <a class="masthead-brand" href={addressOf({ place: 'bench' })} aria-label="Pannikin, to the bench">
        <img src="./icons/cup.svg" alt="" width="40" height="40" />
        <span>Pannikin</span>
      </a>
      <nav class="masthead-doors" aria-label="Places">
        {doors.map((door) => (
          <a
            key={door.place}
            class="masthead-door"
            href={addressOf({ place: door.place })}
            aria-current={door.place === place ? 'page' : undefined}
          >
            <Icon name={door.icon} size={24} />
            <span>{door.name}</span>
          </a>
        ))}
      </nav>
      <button
        type="button"
        class="masthead-person"
        aria-label={person ? `${person.name} is at this tablet: change` : 'Say who is at this tablet'}
        onClick={() => setChoosing(true)}
      >
        {person ? person.initials : <Icon name="user" size={24} />}
      </button>
      {choosing && <PersonSheet onClose={() => setChoosing(false)} />}
    </header>
  )
}
