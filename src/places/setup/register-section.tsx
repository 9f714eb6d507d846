import { useMemo, useState } from 'preact/hooks'
import type { App } from '../../app/app'
import { useApp } from '../../app/app'
import { type Format, useFormat } from '../../app/format'
import { PlainForm } from '../../app/forms/plain-form'
import { latePart } from '../../app/late-part'
import type { Balance, KeptVessel, Person } from '../../batch/catalogue'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Row, Switch } from '../../parts/choice'
import type { IconName } from '../../parts/icon'
import { Sheet } from '../../parts/sheet'
import { putAway, type Register, registerForm } from './registers'

const PinSheet = latePart(() => import('./pin-sheet'), 'PinSheet')

const words: Record<Register, { add: string; none: string; title: string; icon: IconName }> = {
  person: {
    add: 'Add a person',
    none: 'Nobody yet. Every entry of a batch says who made it: add yourself first.',
    title: 'Person',
    icon: 'user',
  },
  balance: {
    add: 'Add a balance',
    none: 'No balance yet. Its readability and repeatability decide what it can weigh well.',
    title: 'Balance',
    icon: 'scale',
  },
  vessel: {
    add: 'Add a vessel',
    none: 'No vessel yet. What it weighs empty is then known at every start.',
    title: 'Vessel',
    icon: 'beaker',
  },
}

/** A list of Setup: its entries, and a form over it. */
export function RegisterSection({ register }: { register: Register }) {
  const app = useApp()
  const format = useFormat()
  const [changing, setChanging] = useState<string | null>(null)
  const [withArchived, setWithArchived] = useState(false)
  const all = entriesOf(app, register, format)
  const entries = all.filter(({ archived }) => withArchived || !archived)
  const { add, none, icon } = words[register]
  return (
    <>
      {register === 'person' && <WhoIsHere />}
      <Card label="List">
        {entries.length === 0 && <p class="setup-hint">{none}</p>}
        {entries.map(({ id, label, sub, archived }) => (
          <Row
            key={id}
            icon={icon}
            label={label}
            sub={archived ? `${sub} · put away` : sub}
            onPress={() => setChanging(id)}
          />
        ))}
      </Card>
      <div class="setup-buttons">
        <Button kind="outline" icon="plus" label={add} onPress={() => setChanging(app.ids.next())} />
      </div>
      {all.some(({ archived }) => archived) && (
        <Switch label="Show what was put away" checked={withArchived} onChange={setWithArchived} />
      )}
      {changing && <EntrySheet register={register} id={changing} onClose={() => setChanging(null)} />}
    </>
  )
}

function WhoIsHere() {
  const app = useApp()
  const person = app.settings.person.value
  return (
    <p class="setup-hint">
      {person
        ? `${person.name} (${person.initials}) is at this tablet. The button with the initials, at the top, changes it.`
        : 'Say who is at this tablet with the button at the top right.'}
    </p>
  )
}

function EntrySheet({ register, id, onClose }: { register: Register; id: string; onClose: () => void }) {
  const app = useApp()
  const form = useMemo(() => registerForm(app, register, id), [app, register, id])
  const here = documentsOf(app, register).find((document) => document.id === id)
  const [pinning, setPinning] = useState(false)
  if (pinning && here && 'initials' in here) return <PinSheet person={here} onClose={onClose} />
  return (
    <Sheet title={here?.name ?? words[register].add} onClose={onClose}>
      <PlainForm form={form} onSaved={onClose} onCancel={onClose}>
        {here && 'initials' in here && <Button icon="lock" label="PIN for signing" onPress={() => setPinning(true)} />}
        {here && (
          <Button
            icon="package"
            label={here.archived ? 'Take out again' : 'Put away'}
            onPress={() => void putAway(app, register, id, here.archived !== true).then(onClose)}
          />
        )}
      </PlainForm>
    </Sheet>
  )
}

const documentsOf = ({ catalogue }: App, register: Register): readonly (Person | Balance | KeptVessel)[] => {
  const map = { person: catalogue.people, balance: catalogue.balances, vessel: catalogue.vessels }[register].value
  return [...map.values()]
}

function entriesOf(app: App, register: Register, format: Format) {
  return documentsOf(app, register).map((document) => ({
    id: document.id,
    archived: document.archived === true,
    label: document.name,
    sub: subOf(document, format),
  }))
}

function subOf(document: Person | Balance | KeptVessel, format: Format): string {
  if ('initials' in document) return document.initials
  if ('stepUg' in document) {
    const { stepUg, capacityUg, repeatabilityUg, checkEveryHours } = document
    const check = checkEveryHours ? ` · checked every ${checkEveryHours} h` : ''
    return `${format.massWithUnit(stepUg, stepUg)} to ${format.massWithUnit(capacityUg, stepUg)} · s ${format.massWithUnit(repeatabilityUg, 1000)}${check}`
  }
  const tare = document.tareUg === undefined ? 'not weighed empty' : `${format.massWithUnit(document.tareUg)} empty`
  return `${tare} · holds ${format.massWithUnit(document.capacityUg, 1_000_000)}`
}
