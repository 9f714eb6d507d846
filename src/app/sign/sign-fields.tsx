import './sign-fields.css'
import { useEffect, useMemo } from 'preact/hooks'
import type { Person } from '../../batch/catalogue'
import { Button } from '../../parts/button'
import { TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { PillButton } from '../../parts/pill-button'
import { useApp } from '../app'
import { PinField } from './pin-field'
import { whatAPinIs } from './pin-words'
import { createSign, type SignModel, type SignWish } from './sign-model'

/** A signature in the making for as long as its fields are on the screen. */
export function useSign(wish: SignWish): SignModel {
  const app = useApp()
  const sign = useMemo(() => createSign(app, wish), [app])
  useEffect(() => sign.dispose, [sign])
  return sign
}

interface SignFieldsProps {
  sign: SignModel
  /** What stands over it: "Performed by". */
  label: string
  /** Who may sign; everybody the tablet knows where it is left out. */
  people?: readonly Person[] | undefined
  /** A further tap on who is chosen leaves the signature out. */
  optional?: boolean | undefined
  onEnter?: (() => void) | undefined
}

/** Who signs, their PIN where they have one, and the way on where it is forgotten. */
export function SignFields({ sign, label, people: given, optional = false, onEnter }: SignFieldsProps) {
  const app = useApp()
  const people = given ?? [...app.catalogue.people.value.values()].filter(({ archived }) => !archived)
  const person = people.find(({ id }) => id === sign.person.value)
  const others = people.filter(({ id }) => id !== sign.person.value)
  const instead = sign.instead.value
  return (
    <fieldset class="sign">
      <legend>{label}</legend>
      <Chips
        people={people}
        chosen={sign.person.value}
        onChoose={(id) => {
          sign.instead.value = null
          sign.person.value = optional && id === sign.person.peek() ? '' : id
        }}
      />
      {person && instead !== null && (
        <>
          <p>In the place of {person.name} signs</p>
          <Chips people={others} chosen={instead} onChoose={(id) => (sign.instead.value = id)} />
          <TextField
            label={`Why ${person.initials} does not sign`}
            value={sign.reason.value}
            onChange={(text) => (sign.reason.value = text)}
          />
        </>
      )}
      {sign.signer.value !== '' && <How sign={sign} people={people} onEnter={onEnter} />}
      {person && others.length > 0 && sign.kept.value && instead === null && (
        <Button
          kind="plain"
          label="PIN forgotten: another person signs"
          onPress={() => {
            sign.instead.value = ''
            sign.reason.value = 'PIN forgotten'
          }}
        />
      )}
      {sign.refused.value && <Notice kind="over" title={sign.refused.value} live />}
    </fieldset>
  )
}

interface HowProps {
  sign: SignModel
  people: readonly Person[]
  onEnter: (() => void) | undefined
}

/** By PIN, or by name alone, which is said. */
function How({ sign, people, onEnter }: HowProps) {
  const signer = people.find(({ id }) => id === sign.signer.value)
  if (signer === undefined || sign.kept.value === undefined) return null
  if (sign.kept.value === null)
    return <p class="sign-hint">{signer.initials} has no PIN and signs by name. The record says so.</p>
  return (
    <PinField
      label={`PIN of ${signer.name}`}
      hint={whatAPinIs}
      value={sign.pin.value}
      onChange={(pin) => (sign.pin.value = pin)}
      onEnter={onEnter}
    />
  )
}

interface ChipsProps {
  people: readonly Person[]
  chosen: string
  onChoose: (id: string) => void
}

const Chips = ({ people, chosen, onChoose }: ChipsProps) => (
  <div class="sign-people">
    {people.map(({ id, initials }) => (
      <PillButton key={id} text={initials} selected={id === chosen} onPress={() => onChoose(id)} />
    ))}
    {people.length === 0 && <p class="sign-hint">Nobody is known yet. People are added in Setup.</p>}
  </div>
)
