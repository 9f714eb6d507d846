import type { RefObject } from 'preact'
import { useRef } from 'preact/hooks'
import { useBeforeFrame } from '../../parts/use-before-frame'

/**
 * Puts the focus on the heading of a step when another one is taken in hand, so that a reader hears where it is. The
 * first step shown takes it too; nothing else moves the focus.
 */
export function useFocusOnStep(place: RefObject<HTMLElement | null>, stepId: string | null): void {
  const shown = useRef<string | null | undefined>(undefined)
  useBeforeFrame(() => {
    if (shown.current === stepId) return
    shown.current = stepId
    if (document.querySelector('dialog[open]') !== null) return
    place.current?.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true })
  }, [stepId])
}
