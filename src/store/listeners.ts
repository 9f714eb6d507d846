/** Those who want to hear of something; a listener that throws does not keep the others from hearing. */
export interface Listeners<A extends unknown[]> {
  add(listener: (...args: A) => void): () => void
  tell(...args: A): void
}

export function listeners<A extends unknown[]>(): Listeners<A> {
  const all = new Set<(...args: A) => void>()
  return {
    add: (listener) => {
      all.add(listener)
      return () => all.delete(listener)
    },
    tell: (...args) => {
      for (const listener of all) {
        try {
          listener(...args)
        } catch (error) {
          queueMicrotask(() => {
            throw error
          })
        }
      }
    },
  }
}
