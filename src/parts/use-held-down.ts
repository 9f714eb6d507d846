import { useRef, useState } from 'preact/hooks'

/** A finger that lifts leaves the button first and presses it a moment later; one that scrolls leaves it as well. */
const pressFollowsMs = 100

/**
 * For a button whose outcome comes at once: pressed, it stays down until that is there. Coming up by itself would take
 * a frame just when what it did is about to be shown.
 */
export function useHeldDown(onPress: () => Promise<unknown>) {
  const [down, setDown] = useState(false)
  const working = useRef(false)
  const leave = () => void setTimeout(() => working.current || setDown(false), pressFollowsMs)
  const onClick = async () => {
    working.current = true
    await onPress().finally(() => {
      working.current = false
      setDown(false)
    })
  }
  return { down, hears: { onClick, onPointerDown: () => setDown(true), onPointerLeave: leave } }
}
