import { useLayoutEffect, useRef } from 'preact/hooks'
import type { HardwareKeys, hearKeys } from './hardware-keys'

/** Fetched with the first that listens: the first screen is drawn without it. */
const fetched: { hear?: typeof hearKeys } = {}

/**
 * A keyboard, a keyboard wedge and the clipboard reach the number in hand without a field holding the focus. What is on
 * the screen hears: an effect after the frame would lose a key that comes with it.
 */
export const useHardwareKeys = (keys: HardwareKeys, active: boolean) => {
  const latest = useRef(keys)
  latest.current = keys
  useLayoutEffect(() => {
    if (!active) return
    let wanted = true
    let stop = fetched.hear?.(() => latest.current)
    if (!stop)
      void import('./hardware-keys').then(({ hearKeys }) => {
        fetched.hear = hearKeys
        if (wanted) stop = hearKeys(() => latest.current)
      })
    return () => {
      wanted = false
      stop?.()
    }
  }, [active])
}
