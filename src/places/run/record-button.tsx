import { classes } from '../../parts/classes'
import { Mark, type MarkKind } from '../../parts/mark'

export type RecordKind = 'to-go' | 'within' | 'over' | 'closed'

interface RecordButtonProps {
  kind: RecordKind
  label: string
  /** "short by 0.17 g", "then choose a way on", or why it is closed. */
  sub?: string | undefined
  onPress: () => void
}

const looks: Readonly<Record<RecordKind, string>> = {
  'to-go': 'button-outline',
  within: 'button-within on-solid',
  over: 'button-over',
  closed: 'button-closed',
}

const marks: Readonly<Record<RecordKind, MarkKind>> = {
  'to-go': 'to-go',
  within: 'within',
  over: 'over',
  closed: 'closed',
}

/** The one thing to press in the lower corner of the writing hand; its shape says how the number stands. */
export const RecordButton = ({ kind, label, sub, onPress }: RecordButtonProps) => (
  <button
    type="button"
    class={classes('button button-primary button-full record', looks[kind])}
    data-action="record"
    aria-disabled={kind === 'closed' || undefined}
    onClick={() => {
      if (kind !== 'closed') onPress()
    }}
  >
    <Mark kind={marks[kind]} size={34} />
    <span class="button-words">
      <span class="button-label">{label}</span>
      {sub && <span class="button-sub">{sub}</span>}
    </span>
  </button>
)
