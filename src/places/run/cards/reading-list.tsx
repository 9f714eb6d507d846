import './reading-list.css'
import { useRun } from '../run-context'

export interface ReadingRow {
  /** The entry's id. */
  readonly id: string
  readonly at: string
  readonly text: string
  readonly note?: string
}

/** What was read or put in so far, the newest on top. */
export function ReadingList({ label, rows }: { label: string; rows: readonly ReadingRow[] }) {
  const states = useRun().handle.entryStates.value
  if (rows.length === 0) return null
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and is read on with the arrow keys
    <ol class="readings" aria-label={label} tabIndex={0}>
      {rows.toReversed().map((row) => {
        const state = states.get(row.id) ?? 'recorded'
        return (
          <li key={row.id} class="readings-row" data-entry={row.id} data-state={state}>
            <span class="readings-at">{row.at}</span>
            <b>{row.text}</b>
            <span class="readings-note">{state === 'recorded' ? row.note : state.replace('-', ' ')}</span>
          </li>
        )
      })}
    </ol>
  )
}
