/** Thrown where the database did not answer within the time it is given. */
export class NoAnswer extends Error {
  override readonly name = 'NoAnswer'
}

/** Thrown where there is no database to be had; the connection's state says why. */
export class NoDatabase extends Error {
  override readonly name = 'NoDatabase'
}

/** Full storage shows as such, or as an abort with the cause inside. */
export function isFull(error: unknown): boolean {
  if (!(error instanceof Error)) return false
  return error.name === 'QuotaExceededError' || isFull(error.cause) || /quota/i.test(error.message)
}

const deadConnection: readonly string[] = [
  'AbortError',
  'InvalidStateError',
  'UnknownError',
  'NotFoundError',
  'TransactionInactiveError',
  'TimeoutError',
  'NoAnswer',
]

/** Faults after which a new connection may work; anything else is a fault of ours and is thrown on. */
export const isDead = (error: unknown): boolean => error instanceof Error && deadConnection.includes(error.name)

export const isStorageFault = (error: unknown): boolean => isDead(error) || isFull(error) || error instanceof NoDatabase

/** Gives up waiting after `limitMs`; what was waited for may still happen. */
export function withPatience<T>(work: Promise<T>, limitMs: number): Promise<T> {
  return new Promise((resolve, reject) => {
    const limit = setTimeout(() => reject(new NoAnswer()), limitMs)
    work.then(resolve, reject).finally(() => clearTimeout(limit))
  })
}
