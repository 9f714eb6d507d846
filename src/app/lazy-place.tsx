import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/** A place that is fetched when it is first shown (or warmed), so that the bench and the run start without it. */
export function lazyPlace(fetchIt: () => Promise<ComponentType>): ComponentType {
  return function LazyPlace() {
    const [Place, setPlace] = useState<ComponentType | null>(null)
    useEffect(() => {
      let here = true
      // A part that cannot be loaded is the recovery panel's business: it listens for it.
      void fetchIt().then((component) => here && setPlace(() => component))
      return () => {
        here = false
      }
    }, [])
    return Place === null ? <main aria-busy="true" /> : <Place />
  }
}
