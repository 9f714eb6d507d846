import { useLayoutEffect, useRef, useState } from 'preact/hooks'

const lastPx = new Map<string, number>()

/**
 * The width in px of the element that takes the ref, kept up to date. The next element of the same `name` begins with
 * what the last one had: asking for it at once would make the browser lay the page out twice. 0 until the first is
 * measured.
 */
export const useWidth = <E extends HTMLElement>(name: string) => {
  const ref = useRef<E>(null)
  const [widthPx, setWidthPx] = useState(lastPx.get(name) ?? 0)
  useLayoutEffect(() => {
    const element = ref.current
    if (element === null) return
    const take = (px: number) => {
      lastPx.set(name, px)
      setWidthPx(px)
    }
    if (widthPx === 0) take(element.clientWidth)
    const observer = new ResizeObserver(() => take(element.clientWidth))
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { ref, widthPx }
}
