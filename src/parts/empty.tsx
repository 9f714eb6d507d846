import './empty.css'
import type { ComponentChildren } from 'preact'
import { Cup } from './cup.tsx'

interface EmptyStateProps {
  title: string
  /** What belongs here, in a sentence or two. */
  text: string
  /** One button to make the first one, one to load the demonstration. */
  actions?: ComponentChildren
}

/** Nothing here yet, and what to do about it. */
export const EmptyState = ({ title, text, actions }: EmptyStateProps) => (
  <div class="empty">
    <Cup strata={[]} targetUg={1} width={104} height={120} />
    <h2>{title}</h2>
    <p class="empty-text">{text}</p>
    {actions && <div class="empty-actions">{actions}</div>}
  </div>
)
