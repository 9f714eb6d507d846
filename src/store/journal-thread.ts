/** Address of the built journal worker; an object where the page's Trusted Types policy made it. */
export type WorkerUrl = string | { toString(): string }

/** Which page's journal a worker keeps, and how often it was started for it: it knows that by its own name. */
export interface ThreadOf {
  readonly pageId: string
  /** Tells apart the files of one page whose worker was started again. */
  readonly incarnation: number
}

/** A worker that was started before there is anybody to listen to it. */
export interface EarlyThread {
  /** The worker, once; null where it could not be started, or where it failed meanwhile. */
  take(): Worker | null
}

export const newThread = (url: WorkerUrl, { pageId, incarnation }: ThreadOf): Worker =>
  // The DOM types know no TrustedScriptURL; the browser takes the object that the policy made.
  new Worker(url as string, { type: 'module', name: `journal ${pageId} ${incarnation}` })

export function threadOf(name: string): ThreadOf {
  const [, pageId = '', incarnation = ''] = name.split(' ')
  return { pageId, incarnation: Number(incarnation) }
}

/** Has the browser start the journal's worker while most of the app is still being read. */
export function earlyThread(url: WorkerUrl, of: ThreadOf): EarlyThread {
  let thread: Worker | null = null
  try {
    thread = newThread(url, of)
    thread.onerror = () => {
      thread = null
    }
  } catch {
    // Refused, or not known here: whoever needs it starts it again, and hears why.
  }
  return {
    take: () => {
      const taken = thread
      thread = null
      if (taken) taken.onerror = null
      return taken
    },
  }
}
