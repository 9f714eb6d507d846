import './card.css'
import type { ComponentChildren } from 'preact'
import { classes } from './classes.ts'

interface CardProps {
  /** The enamel rim: cobalt where to act, vermilion for what went over, pine for within. One a screen. */
  lip?: 'action' | 'over' | 'within' | 'none' | undefined
  /** Names the card as a region of the page. */
  label?: string | undefined
  /** Or the id of the heading that names it. */
  labelledBy?: string | undefined
  class?: string | undefined
  id?: string | undefined
  children?: ComponentChildren
}

export const Card = ({ lip = 'none', label, labelledBy, class: extra, id, children }: CardProps) => (
  <section
    class={classes('card', lip !== 'none' && `card-lip card-${lip}`, extra)}
    id={id}
    aria-label={label}
    aria-labelledby={labelledBy}
  >
    {children}
  </section>
)
