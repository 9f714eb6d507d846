import './hero.css'
import { Mark } from './mark.tsx'
import { Said } from './said.tsx'
import { widthEm } from './text-width.ts'

interface HeroNumberProps {
  text: string
  unit?: string | undefined
  size?: 'normal' | 'deviation' | 'range' | 'phone' | 'small' | undefined
  /** Nothing typed yet: the number is drawn quiet. */
  empty?: boolean | undefined
}

/** The one number of the screen. It shrinks until it fits its container, and never wraps. */
export const HeroNumber = ({ text, unit = '', size = 'normal', empty = false }: HeroNumberProps) => (
  <div class="hero">
    <p
      class={`hero-line hero-${size}${empty ? ' hero-empty' : ''}`}
      style={{ '--hero-em': widthEm(text) + (unit === '' ? 0 : 0.13 + 0.42 * widthEm(unit)) }}
    >
      <span class="hero-text">{text}</span>
      {unit !== '' && <span class="hero-unit"> {unit}</span>}
    </p>
  </div>
)

interface StateLineProps {
  state: 'to-go' | 'within' | 'over' | 'waiting'
  text: string
}

/** How the number stands to its band: shape, word and colour. Only the milestones are announced, not every digit. */
export const StateLine = ({ state, text }: StateLineProps) => (
  <>
    <p class={`state-line state-${state}`}>
      <Mark kind={state} size={42} />
      <span>{text}</span>
    </p>
    <Said text={state === 'within' ? 'Within the band' : state === 'over' ? 'Over the band' : ''} />
  </>
)
