import type { Awake, AwakeState } from '../../ports/awake'

/** A wake lock that is fetched when it is first asked for: the first screen is drawn without it. */
export const lateAwake = (fetchIt: () => Promise<Awake>): Awake => {
  const listeners = new Set<(state: AwakeState) => void>()
  let wanted = false
  let asked = false
  let awake: Awake | undefined

  const follow = (): void => {
    if (wanted) awake?.keep()
    else awake?.release()
  }
  return {
    keep: () => {
      wanted = true
      follow()
      if (asked) return
      asked = true
      void fetchIt().then((found) => {
        awake = found
        found.onChange((state) => {
          for (const listener of listeners) listener(state)
        })
        follow()
      })
    },
    release: () => {
      wanted = false
      follow()
    },
    onChange: (callback) => {
      listeners.add(callback)
      return () => listeners.delete(callback)
    },
  }
}
