import { Choice } from '../../parts/choice'
import { TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { ReasonChips } from '../../parts/reason-chips'

interface WhenDraft {
  readonly when: string
  readonly moment: string
  readonly reason: string
}

interface WhenPartProps {
  draft: WhenDraft
  change: (part: { when?: 'now' | 'earlier'; moment?: string; reason?: string }) => void
  wrong: { moment: string | undefined; reason: string | undefined }
}

/** Read now, or earlier than it is entered: then when, and why so late. */
export function WhenPart({ draft, change, wrong }: WhenPartProps) {
  return (
    <>
      <Choice
        label="When it was read"
        value={draft.when === 'earlier' ? 'earlier' : 'now'}
        options={[
          { value: 'now', label: 'Now' },
          { value: 'earlier', label: 'Earlier' },
        ]}
        onChange={(when) => change({ when })}
      />
      {draft.when === 'earlier' && (
        <>
          <TextField
            label="Day and time"
            type="datetime-local"
            value={draft.moment}
            onChange={(moment) => change({ moment })}
            error={wrong.moment}
          />
          <ReasonChips
            label="Why it is entered late"
            options={['hands were full', 'written on paper first', 'forgotten']}
            value={draft.reason}
            onChange={(reason) => change({ reason })}
            other="Another reason"
          />
          {wrong.reason && <Notice kind="over" title={wrong.reason} live />}
        </>
      )}
    </>
  )
}
