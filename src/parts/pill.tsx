import './chips.css'
import { Icon, type IconName } from './icon.tsx'

interface PillProps {
  text: string
  tone?: 'plain' | 'caution' | 'within' | 'over' | undefined
  icon?: IconName | undefined
}

/** A small mark in the text. */
export const Pill = ({ text, tone = 'plain', icon }: PillProps) => (
  <span class={`pill pill-${tone}`}>
    {icon && <Icon name={icon} size={18} />}
    {text}
  </span>
)
