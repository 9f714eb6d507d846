import type { ArchiveRefusal } from '../ports/archive'
import { accept, type Result, refuse } from '../trade/result'
import { isFull, isStorageFault } from './faults'

/** Thrown inside the reading or writing of a file, and turned into a result at its edge. */
export class Refused extends Error {
  constructor(readonly refusal: ArchiveRefusal) {
    super(refusal.code)
  }
}

export async function asResult<T>(work: () => Promise<T>): Promise<Result<T, ArchiveRefusal>> {
  try {
    return accept(await work())
  } catch (error) {
    if (error instanceof Refused) return refuse(error.refusal)
    if (isFull(error)) return refuse({ code: 'STORAGE_FULL' })
    // A file that changed or went away while it was read is cut, as far as anybody can tell.
    if (error instanceof DOMException && error.name === 'NotReadableError')
      return refuse({ code: 'FILE_DAMAGED', line: 0 })
    if (isStorageFault(error)) return refuse({ code: 'STORAGE_REFUSED' })
    throw error
  }
}

/** Ends what a person has stopped before anything was changed. */
export function goOnUnless(signal: AbortSignal | undefined): void {
  if (signal?.aborted) throw new Refused({ code: 'STOPPED', cause: 'asked', done: 0, of: 0 })
}
