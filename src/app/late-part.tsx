import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { useApp } from './app'

/**
 * A part of a screen that is fetched when it is first shown (or warmed), so that the bench and the run start without it;
 * with the first screen it waits until that stands. Until it has come nothing stands in its place.
 */
export const latePart = <Props extends object>(fetchIt: () => Promise<ComponentType<Props>>): ComponentType<Props> =>
  late(fetchIt, Nothing, true)

/** A whole place that is fetched when it is first shown. */
export const latePlace = (fetchIt: () => Promise<ComponentType>): ComponentType =>
  late(fetchIt, () => <main aria-busy="true" />, false)

function late<Props extends object>(
  fetchIt: () => Promise<ComponentType<Props>>,
  Meanwhile: ComponentType<Props>,
  waits: boolean,
): ComponentType<Props> {
  let known: ComponentType<Props> | null = null
  return function LatePart(props: Props) {
    const { calm } = useApp()
    const [Part, setPart] = useState(() => known)
    useEffect(() => {
      if (Part !== null) return
      let here = true
      // A part that cannot be loaded is the recovery panel's business: it listens for it.
      void (waits ? calm.then(fetchIt) : fetchIt()).then((component) => {
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

const Nothing = () => null
