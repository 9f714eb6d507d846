import './button.css'
import { classes } from './classes.ts'
import { Icon, type IconName } from './icon.tsx'
import { Mark, type MarkKind } from './mark.tsx'

export type ButtonKind = 'filled' | 'outline' | 'quiet' | 'plain' | 'within' | 'over' | 'caution' | 'closed'

export interface ButtonProps {
  label: string
  /** One small line under the label; of a closed or disabled button, the reason. */
  sub?: string | undefined
  kind?: ButtonKind | undefined
  size?: 'primary' | 'normal' | 'small' | undefined
  icon?: IconName | undefined
  mark?: MarkKind | undefined
  onPress?: ((event: MouseEvent) => void) | undefined
  /** With an address the button is a link that looks like one. */
  href?: string | undefined
  /** Stays reachable, says that it is disabled, and does nothing. */
  disabled?: boolean | undefined
  full?: boolean | undefined
  type?: 'button' | 'submit' | undefined
  /** A longer name for assistive technology; it must contain the label. */
  name?: string | undefined
  pressed?: boolean | undefined
  expanded?: boolean | undefined
  class?: string | undefined
  id?: string | undefined
}

/** What a hand presses: 56 px at least, 72 px when primary. It acts on release, so that a slip can be taken back. */
export const Button = (props: ButtonProps) => {
  const {
    label,
    sub,
    kind = 'quiet',
    size = 'normal',
    icon,
    mark,
    onPress,
    href,
    full,
    name,
    pressed,
    expanded,
    id,
  } = props
  const closed = kind === 'closed' || props.disabled === true
  const look = classes(
    'button',
    `button-${kind}`,
    `button-${size}`,
    full && 'button-full',
    closed && kind !== 'closed' && 'button-disabled',
    (kind === 'filled' || kind === 'within') && 'on-solid',
    props.class,
  )
  const inside = (
    <>
      {icon && <Icon name={icon} size={size === 'primary' ? 30 : 24} />}
      {mark && <Mark kind={mark} size={size === 'primary' ? 34 : 28} />}
      <span class="button-words">
        <span class="button-label">{label}</span>
        {sub && <span class="button-sub">{sub}</span>}
      </span>
    </>
  )
  if (href !== undefined && !closed)
    return (
      <a class={look} href={href} id={id} aria-label={name} onClick={onPress}>
        {inside}
      </a>
    )
  return (
    <button
      class={look}
      id={id}
      type={props.type ?? 'button'}
      aria-label={name}
      aria-disabled={closed || undefined}
      aria-pressed={pressed}
      aria-expanded={expanded}
      onClick={(event) => (closed ? event.preventDefault() : onPress?.(event))}
    >
      {inside}
    </button>
  )
}
