import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { PinField } from '../../app/sign/pin-field'
import { pinSentence, whatAPinIs } from '../../app/sign/pin-words'
import { type Before, createPins, isPin } from '../../app/sign/pins'
import type { Person } from '../../batch/catalogue'
import type { KeptPin } from '../../batch/person-trail'
import { Button } from '../../parts/button'
import { TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { Sheet } from '../../parts/sheet'

interface PinSheetProps {
  person: Person
  onClose: () => void
}

/** A person's PIN: set, changed, set anew where it was forgotten, or taken away. */
export function PinSheet({ person, onClose }: PinSheetProps) {
  const app = useApp()
  const pins = useMemo(() => createPins(app), [app])
  const [kept, setKept] = useState<KeptPin | null | undefined>(undefined)
  useEffect(() => void pins.of(person.id).then(setKept), [pins, person.id])
  return (
    <Sheet title={`PIN of ${person.name}`} onClose={onClose}>
      <Notice title={whatAPinIs}>
        <p>
          It is kept as a salted, slow hash on this tablet and in backup files of everything; no batch or formula that
          is handed on carries it.
        </p>
      </Notice>
      {kept !== undefined && <PinForm person={person} pins={pins} kept={kept} onClose={onClose} />}
    </Sheet>
  )
}

interface PinFormProps extends PinSheetProps {
  pins: ReturnType<typeof createPins>
  kept: KeptPin | null
}

function PinForm({ person, pins, kept, onClose }: PinFormProps) {
  const format = useFormat()
  const [current, setCurrent] = useState('')
  const [forgotten, setForgotten] = useState(false)
  const [reason, setReason] = useState('')
  const [first, setFirst] = useState('')
  const [again, setAgain] = useState('')
  const [refused, setRefused] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const differs = again !== '' && first !== again
  const missing = missingIn({ asks: kept !== null && !forgotten, current, forgotten, reason, first, again })
  const did = async (work: ReturnType<typeof pins.remove>) => {
    setBusy(true)
    const refusal = await work
    setBusy(false)
    if (refusal === null) onClose()
    else setRefused(pinSentence(refusal))
  }
  const before = (): Before => {
    if (kept === null) return { known: 'none' }
    return forgotten ? { known: 'forgotten', reason } : { known: 'given', current }
  }
  return (
    <div class="plain-form">
      {kept && <p>Set {format.dateTime(Date.parse(kept.setAt))}.</p>}
      {kept && !forgotten && <PinField label="The PIN so far" value={current} onChange={setCurrent} />}
      {forgotten && (
        <TextField
          label="Why it is set anew"
          hint={`It stands in the trail of ${person.initials}, with who is at this tablet. Signatures say since when a PIN is valid.`}
          value={reason}
          onChange={setReason}
        />
      )}
      <PinField label="New PIN" hint="4 to 12 digits" value={first} onChange={setFirst} />
      <PinField
        label="The same again"
        value={again}
        onChange={setAgain}
        error={differs ? 'The two are not the same. Type the new PIN twice.' : undefined}
      />
      {refused && <Notice kind="over" title={refused} live />}
      <div class="plain-form-buttons">
        <Button
          kind={missing || busy ? 'closed' : 'filled'}
          icon="check"
          label={busy ? 'One moment' : 'Set the PIN'}
          sub={missing}
          onPress={() => void did(pins.set(person.id, first, before()))}
        />
        {kept && !forgotten && <Button label="The PIN is forgotten" onPress={() => setForgotten(true)} />}
        {kept && !forgotten && current !== '' && (
          <Button icon="trash" label="Take the PIN away" onPress={() => void did(pins.remove(person.id, current))} />
        )}
      </div>
    </div>
  )
}

interface Typed {
  asks: boolean
  current: string
  forgotten: boolean
  reason: string
  first: string
  again: string
}

function missingIn({ asks, current, forgotten, reason, first, again }: Typed): string | undefined {
  if (asks && current === '') return 'type the PIN so far'
  if (forgotten && reason.trim() === '') return 'say why first'
  if (!isPin(first)) return '4 to 12 digits'
  return first === again ? undefined : 'type it twice'
}
