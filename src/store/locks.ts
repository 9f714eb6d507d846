/** Named locks shared by all pages and workers of this origin. */
export interface Locks {
  exclusive<T>(name: string, task: () => Promise<T>): Promise<T>
  /** Holds the lock until the page or worker is gone; resolves once it is held. */
  keep(name: string): Promise<void>
  /** Names held by anybody now. */
  held(): Promise<ReadonlySet<string>>
}

export const pageLock = (pageId: string): string => `page:${pageId}`

/** Web Locks; where there are none, each page is taken to be the only one. */
export function webLocks(): Locks {
  const locks = navigator.locks as LockManager | undefined
  if (!locks) return { exclusive: (_name, task) => task(), keep: async () => undefined, held: async () => new Set() }
  return {
    exclusive: (name, task) => locks.request(name, task),
    keep: (name) =>
      new Promise((granted, refused) => {
        locks
          .request(name, () => {
            granted()
            return new Promise(() => undefined)
          })
          .catch(refused)
      }),
    held: async () => new Set((await locks.query()).held?.flatMap((lock) => lock.name ?? [])),
  }
}
