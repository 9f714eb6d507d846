import { useLayoutEffect, useRef, useState } from 'preact/hooks'

/** The width in px of the element that takes the ref, kept up to date; 0 until it is measured. */
export const useWidth = <E extends HTMLElement>() => {
  const ref = useRef<E>(null)
  const [widthPx, setWidthPx] = useState(0)
  useLayoutEffect(() => {
    const element = ref.current
    if (element === null) return
    const measure = () => setWidthPx(element.clientWidth)
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { ref, widthPx }
}
