import { classes } from '../../parts/classes'
import { Mark, type MarkKind } from '../../parts/mark'
import { useHeldDown } from '../../parts/use-held-down'

export type RecordKind = 'to-go' | 'within' | 'over' | 'closed'

interface RecordButtonProps {
  kind: RecordKind
  label: string
  /** "short by 0.17 g", "then choose a way on", or why it is closed. */
  sub?: string | undefined
  onPress: () => Promise<unknown>
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
export function RecordButton({ kind, label, sub, onPress }: RecordButtonProps) {
  const closed = kind === 'closed'
  const { down, hears } = useHeldDown(async () => closed || onPress())
  return (
    <button
      type="button"
      class={classes('button button-primary button-full record', looks[kind], down && 'record-down')}
      data-action="record"
      aria-disabled={closed || undefined}
      {...hears}
    >
      <Mark kind={marks[kind]} size={34} />
      <span class="button-words">
        <span class="button-label">{label}</span>
        {sub && <span class="button-sub">{sub}</span>}
      </span>
    </button>
  )
}
