import { useState } from 'preact/hooks'
import { Button } from '../../parts/button'
import { ReasonChips } from '../../parts/reason-chips'
import { Sheet } from '../../parts/sheet'
import type { Choice } from './choice'
import { keeping, type SettleCard } from './ways'

interface KeepSheetProps {
  card: SettleCard
  onKeep: (take: (choice: Choice) => Choice) => void
  onClose: () => void
}

/** Going on as it is: the reason stands in the record. */
export const KeepSheet = ({ card, onKeep, onClose }: KeepSheetProps) => {
  const [reason, setReason] = useState('')
  const given = reason.trim()
  return (
    <Sheet
      title="Keep it: why?"
      onClose={onClose}
      foot={
        <Button
          kind="filled"
          size="primary"
          label="Keep it"
          disabled={given === ''}
          sub={given === '' ? 'a reason first' : undefined}
          onPress={() => onKeep(keeping(card.code, card.abouts, given))}
        />
      }
    >
      <p>
        <strong>{card.title}.</strong> {card.text}
      </p>
      <ReasonChips label="Reason" options={card.reasons} value={reason} onChange={setReason} other="or in your words" />
    </Sheet>
  )
}
