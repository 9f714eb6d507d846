import './notice.css'
import type { ComponentChildren } from 'preact'
import { Icon, type IconName } from './icon.tsx'
import { Said } from './said.tsx'

/** What to wear or to watch, before the hand moves. */
export const Caution = ({ icon = 'triangle-alert', text }: { icon?: IconName | undefined; text: string }) => (
  <p class="caution">
    <Icon name={icon} size={28} />
    <span>{text}</span>
  </p>
)

export type NoticeKind = 'info' | 'good' | 'caution' | 'over'

const noticeIcon: Record<NoticeKind, IconName> = {
  info: 'info',
  good: 'check',
  caution: 'triangle-alert',
  over: 'triangle-alert',
}

interface NoticeProps {
  kind?: NoticeKind | undefined
  icon?: IconName | undefined
  title: string
  /** More text, and buttons where something can be done about it. */
  children?: ComponentChildren
  /** Spoken when it appears. */
  live?: boolean | undefined
}

export const Notice = ({ kind = 'info', icon, title, children, live }: NoticeProps) => (
  <div class={`notice notice-${kind}`}>
    <Icon name={icon ?? noticeIcon[kind]} size={26} />
    <div class="notice-words">
      <p class="notice-title">{title}</p>
      {children}
    </div>
    {live && <Said text={title} />}
  </div>
)
