import { effect, type ReadonlySignal } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'

/** The value of a signal once it has been left alone for a moment: for what is too costly, or too restless, for every key. */
export function useLater<T>(source: ReadonlySignal<T>, pauseMs: number): T {
  const [value, setValue] = useState(source.peek())
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    const stop = effect(() => {
      const next = source.value
      clearTimeout(timer)
      timer = setTimeout(() => setValue(() => next), pauseMs)
    })
    return () => {
      stop()
      clearTimeout(timer)
    }
  }, [source, pauseMs])
  return value
}
