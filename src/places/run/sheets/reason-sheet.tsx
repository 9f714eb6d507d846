import type { ComponentChildren } from 'preact'
import type { Intention } from '../../../batch/intention'
import { Button } from '../../../parts/button'
import { Notice } from '../../../parts/notice'
import { ReasonChips } from '../../../parts/reason-chips'
import { Sheet } from '../../../parts/sheet'
import { useSheetDraft } from './use-sheet-draft'

interface ReasonSheetProps {
  /** Keeps what is typed apart from other sheets'. */
  name: string
  title: string
  reasons: readonly string[]
  label: string
  intentionOf: (reason: string) => Intention
  onClose: () => void
  children?: ComponentChildren
}

/** One question: why. Chips for the usual reasons, free text beside them. */
export function ReasonSheet({ name, title, reasons, label, intentionOf, onClose, children }: ReasonSheetProps) {
  const draft = useSheetDraft(name, onClose)
  const reason = draft.text('reason')
  const silent = reason.trim() === ''
  return (
    <Sheet
      title={title}
      onClose={onClose}
      foot={
        <Button
          kind={silent ? 'closed' : 'filled'}
          label={label}
          sub={silent ? 'say why first' : undefined}
          onPress={() => void draft.send(intentionOf(reason))}
        />
      }
    >
      {children}
      {draft.refused && <Notice kind="over" title={draft.refused} live />}
      <ReasonChips
        label="Why"
        options={reasons}
        other="In your own words"
        value={reason}
        onChange={(text) => draft.set('reason', text)}
      />
    </Sheet>
  )
}
