import type { Journal } from './journal-port'
import { type EarlyThread, newThread, type WorkerUrl } from './journal-thread'
import type { JournalCall, JournalReply, JournalRequest } from './journal-worker'

export interface JournalClientOptions {
  readonly workerUrl: WorkerUrl
  /** Started already, for the first time; null where it was not. */
  readonly early: EarlyThread | null
  readonly pageId: string
  /** The page's lock: without it another page would take its file for one that is no longer written. */
  readonly locked: Promise<void>
  readonly onState: (state: JournalState) => void
}

export type JournalState = 'open' | 'dead' | 'missing'

export interface JournalClient extends Journal {
  /** Starts the worker, again where it stopped answering; false where there is no journal to be had now. */
  start(): Promise<boolean>
  state(): JournalState
}

const patienceMs = {
  append: 2_000,
  probe: 3_000,
  start: 5_000,
  held: 10_000,
  table: 30_000,
  read: 30_000,
  damagedOf: 30_000,
  merge: 120_000,
}
const missingErrors: readonly string[] = ['SecurityError', 'NotSupportedError', 'TypeError']

/** The journal seen from the page: calls to the worker, each with a limit of time; a silent worker is ended. */
export function journalClient(options: JournalClientOptions): JournalClient {
  const pending = new Map<number, { resolve: (value: unknown) => void; reject: (error: Error) => void }>()
  let state: JournalState = 'dead'
  let worker: Worker | null = null
  let starting: Promise<boolean> | null = null
  let incarnation = 0
  let lastId = 0
  let firstTable: ReturnType<Journal['table']> | null = null

  function become(next: JournalState): void {
    if (state === next) return
    state = next
    options.onState(next)
  }

  function end(reason: string): void {
    worker?.terminate()
    worker = null
    for (const { reject } of pending.values()) reject(new DOMException(reason, 'AbortError'))
    pending.clear()
    if (state === 'open') become('dead')
  }

  function receive({ data }: MessageEvent<JournalReply>): void {
    const waiting = pending.get(data.id)
    pending.delete(data.id)
    if (data.ok) waiting?.resolve(data.value)
    else waiting?.reject(new DOMException(data.message, data.name))
  }

  function send(call: JournalCall): Promise<unknown> {
    const to = worker
    if (!to) return Promise.reject(new DOMException('The journal is not running', 'InvalidStateError'))
    lastId += 1
    const request: JournalRequest = { id: lastId, ...call }
    const patience = setTimeout(() => end('The journal does not answer'), patienceMs[call.call])
    const answer = new Promise((resolve, reject) => pending.set(request.id, { resolve, reject }))
    to.postMessage(request)
    return answer.finally(() => clearTimeout(patience))
  }

  async function launch(): Promise<boolean> {
    if (state === 'missing') return false
    if (typeof Worker === 'undefined' || !navigator.storage?.getDirectory) {
      options.early?.take()?.terminate()
      become('missing')
      return false
    }
    end('The journal is started again')
    incarnation += 1
    try {
      const { early, workerUrl, pageId } = options
      const started = early?.take() ?? newThread(workerUrl, { pageId, incarnation })
      started.addEventListener('message', receive)
      started.addEventListener('error', () => worker === started && end('The journal stopped'))
      worker = started
      const ready = send({ call: 'start' })
      // What a start of the app asks next is asked at once: the page may be busy drawing when the worker is there.
      firstTable = send({ call: 'table', args: [] }) as ReturnType<Journal['table']>
      firstTable.catch(() => undefined)
      await Promise.all([options.locked, ready])
      become('open')
      return true
    } catch (error) {
      end('The journal did not start')
      become(error instanceof DOMException && missingErrors.includes(error.name) ? 'missing' : 'dead')
      return false
    }
  }

  const start = (): Promise<boolean> => {
    starting ??= launch().finally(() => {
      starting = null
    })
    return starting
  }

  /** The worker answers with what the journal's own function returned. */
  const ask =
    <K extends keyof Journal>(call: K) =>
    (...args: Parameters<Journal[K]>): ReturnType<Journal[K]> =>
      send({ call, args } as JournalCall) as ReturnType<Journal[K]>

  return {
    start,
    state: () => state,
    append: ask('append'),
    table: () => {
      const first = firstTable
      firstTable = null
      return first ?? ask('table')()
    },
    read: ask('read'),
    held: ask('held'),
    merge: ask('merge'),
    probe: ask('probe'),
    damagedOf: ask('damagedOf'),
  }
}
