import './rung.css'
import type { ComponentChildren } from 'preact'
import { classes } from './classes.ts'
import { EntryMark, type EntryState } from './entry-mark.tsx'
import { Icon, type IconName } from './icon.tsx'
import { Mark } from './mark.tsx'

export type RungState = 'done' | 'to-do' | 'now' | 'waiting' | 'over' | 'closed' | 'part'

const words: Record<RungState, string> = {
  done: 'done',
  'to-do': 'to do',
  now: 'in hand',
  waiting: 'waiting',
  over: 'over',
  closed: 'closed',
  part: 'part weighed',
}

/** Steps from top to bottom, `rungs` of them; lists right behind one another are one ladder. */
export const RungList = ({ label, rungs, children }: { label: string; rungs: number; children: ComponentChildren }) => (
  <ol class="rungs" aria-label={label} style={{ '--rungs': rungs }}>
    {children}
  </ol>
)

interface RungProps {
  state: RungState
  title: string
  /** Actual beside target, how long, or why it is closed. */
  value: string
  onPress?: (() => void) | undefined
  /** The step on the screen, when it is not the one in hand. */
  looking?: boolean | undefined
  /** The entry that the rung speaks for, and where it stands. */
  entry?: { readonly id: string; readonly state: EntryState } | undefined
}

/** One step of the ladder, in a `RungList`. Pressing it only looks. */
export const Rung = ({ state, title, value, onPress, looking, entry }: RungProps) => (
  <li class={classes('rung-place', `rung-${state}`)} data-entry={entry?.id} data-state={entry?.state}>
    <button
      type="button"
      class={classes('rung', state === 'now' && 'on-solid', looking && 'rung-looking')}
      aria-current={state === 'now' ? 'step' : undefined}
      onClick={onPress}
    >
      <span class="rung-mark">
        <Mark kind={state} />
      </span>
      <span class="rung-words">
        <span class="visually-hidden">{words[state]}: </span>
        <span class="rung-title">{title}</span>
        <span class="rung-value">{value}</span>
        {entry && entry.state !== 'recorded' && <EntryMark state={entry.state} />}
      </span>
    </button>
  </li>
)

interface PhaseHeadProps {
  /** One letter, or an icon where the phase has none. */
  letter?: string | undefined
  icon?: IconName | undefined
  name: string
  /** "5 lines · 90.00 g", "done 10:48"; hidden while the phase is open. */
  value?: string | undefined
  open: boolean
  state: 'now' | 'to-do' | 'done' | 'waiting'
  onPress?: (() => void) | undefined
  /** The id of the list it opens. */
  controls?: string | undefined
}

/** The head of a phase in the ladder: opens and closes the list of its steps. */
export const PhaseHead = ({ letter, icon, name, value, open, state, onPress, controls }: PhaseHeadProps) => {
  const inside = (
    <>
      {state === 'waiting' ? (
        <span class="phase-badge phase-clock">
          <Mark kind="waiting" size={30} />
        </span>
      ) : (
        <span class={classes('phase-badge', (state === 'now' || state === 'done') && 'on-solid')}>
          {icon ? <Icon name={icon} size={20} /> : letter}
        </span>
      )}
      <span class="rung-words">
        <span class="phase-name">{state === 'waiting' && letter ? `${letter} ${name}` : name}</span>
        {!open && value && <span class="rung-value">{value}</span>}
      </span>
      {!open && <Icon name="chevron-down" />}
    </>
  )
  return (
    <h2 class={classes('phase', `phase-${state}`, open && 'phase-open')}>
      <button type="button" class="phase-button" aria-expanded={open} aria-controls={controls} onClick={onPress}>
        {inside}
      </button>
    </h2>
  )
}
