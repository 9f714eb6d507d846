import { signal } from '@preact/signals'
import { h } from 'preact'
import { firstIcons } from './icons-first'
import type { lateIcons } from './icons-late'

export type IconName = keyof typeof firstIcons | keyof typeof lateIcons

type Drawing = (typeof firstIcons)[keyof typeof firstIcons]

const drawings = signal<Readonly<Partial<Record<IconName, Drawing>>>>(firstIcons)

/** Fetches the drawings that the first screen does without. */
export async function loadIcons(): Promise<void> {
  const { lateIcons } = await import('./icons-late')
  if (drawings.peek() === firstIcons) drawings.value = { ...firstIcons, ...lateIcons }
}

/** A line drawing of `size` px, always beside the word that says the same; hidden from assistive technology. */
export const Icon = ({ name, size = 24 }: { name: IconName; size?: number | undefined }) => {
  const drawing = drawings.value[name]
  if (drawing === undefined) void loadIcons()
  return h(
    'svg',
    {
      class: 'icon',
      viewBox: '0 0 24 24',
      width: size,
      height: size,
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': 2,
      'stroke-linecap': 'round',
      'stroke-linejoin': 'round',
      'aria-hidden': true,
    },
    drawing?.map(([tag, attributes]) => h(tag, { ...attributes })),
  )
}
