import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { useApp } from './app'

/**
 * A part of a screen that is fetched when it is first shown (or warmed), so that the bench and the run start without it;
 * with the first screen it waits until that stands. Until it has come nothing stands in its place.
 */
export const latePart = <Name extends string, Props extends object>(
  fetchIt: () => Promise<Readonly<Record<Name, ComponentType<Props>>>>,
  name: Name,
): ComponentType<Props> => late(fetchIt, name, Nothing, true)

/** A whole place that is fetched when it is first shown. */
export const latePlace = <Name extends string>(
  fetchIt: () => Promise<Readonly<Record<Name, ComponentType>>>,
  name: Name,
): ComponentType => late(fetchIt, name, () => <main aria-busy="true" />, false)

function late<Name extends string, Props extends object>(
  fetchIt: () => Promise<Readonly<Record<Name, ComponentType<Props>>>>,
  name: Name,
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
      void (waits ? calm.then(fetchIt) : fetchIt()).then((module) => {
        const component = module[name]
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
