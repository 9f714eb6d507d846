import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/**
 * A part that is fetched when it is first shown (or warmed), so that the bench and the run start without it. Until it
 * has come `Meanwhile` stands in its place.
 */
export function latePart<Props extends object>(
  fetchIt: () => Promise<ComponentType<Props>>,
  Meanwhile: ComponentType<Props> = Nothing,
): ComponentType<Props> {
  let known: ComponentType<Props> | null = null
  return function LatePart(props: Props) {
    const [Part, setPart] = useState(() => known)
    useEffect(() => {
      if (Part !== null) return
      let here = true
      // A part that cannot be loaded is the recovery panel's business: it listens for it.
      void fetchIt().then((component) => {
        known = component
        if (here) setPart(() => component)
      })
      return () => {
        here = false
      }
    }, [])
    return Part === null ? <Meanwhile {...props} /> : <Part {...props} />
  }
}

/** A whole place that is fetched when it is first shown. */
export const latePlace = (fetchIt: () => Promise<ComponentType>): ComponentType =>
  latePart(fetchIt, () => <main aria-busy="true" />)

const Nothing = () => null
