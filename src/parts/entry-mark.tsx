import './entry-mark.css'
import { classes } from './classes.ts'
import { Icon, type IconName } from './icon.tsx'

export type EntryState = 'recorded' | 'one-copy' | 'held' | 'not-saved'

const entryLook: Record<EntryState, { icon: IconName; word: string }> = {
  recorded: { icon: 'check', word: 'recorded' },
  'one-copy': { icon: 'copy', word: 'one copy' },
  held: { icon: 'hand', word: 'held' },
  'not-saved': { icon: 'triangle-alert', word: 'not saved' },
}

/** Where an entry stands: quiet when all is well, louder the less safe it is. */
export const EntryMark = ({ state }: { state: EntryState }) => (
  <span class={classes('entry', `entry-${state}`, state === 'not-saved' && 'on-solid')}>
    <Icon name={entryLook[state].icon} size={18} />
    {entryLook[state].word}
  </span>
)
