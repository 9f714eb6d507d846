import { journalFiles } from './journal-files'
import { originFolder } from './journal-folder'
import type { Journal } from './journal-port'
import { threadOf } from './journal-thread'
import { webLocks } from './locks'

/** What the page asks of its journal worker. `start` is answered when there is a journal. */
export type JournalCall =
  | { readonly call: 'start' }
  | { [K in keyof Journal]: { readonly call: K; readonly args: Parameters<Journal[K]> } }[keyof Journal]

export type JournalRequest = JournalCall & { readonly id: number }

export type JournalReply =
  | { readonly id: number; readonly ok: true; readonly value: unknown }
  | { readonly id: number; readonly ok: false; readonly name: string; readonly message: string }

const desk = newDesk()
self.addEventListener('message', ({ data }: MessageEvent<JournalRequest>) => {
  desk(data).then(
    (value) => reply({ id: data.id, ok: true, value }),
    (error: unknown) => reply({ id: data.id, ok: false, ...naming(error) }),
  )
})

/** The journal is opened, and what a start of the app asks first is worked out, before the page comes to ask. */
function newDesk(): (request: JournalCall) => Promise<unknown> {
  const { pageId, incarnation } = threadOf(self.name)
  const opened = originFolder().then((folder) =>
    journalFiles({ folder, locks: webLocks(), pageId, incarnation: String(incarnation), damagedOf }),
  )
  let table: ReturnType<Journal['table']> | null = opened.then((journal) => journal.table())
  // Told to whoever asks.
  table.catch(() => undefined)
  return async (request) => {
    const journal = await opened
    if (request.call === 'start') return
    const ready = request.call === 'table' ? table : null
    table = null
    return ready ?? answer(journal, request)
  }
}

function answer(journal: Journal, request: Exclude<JournalCall, { call: 'start' }>): Promise<unknown> {
  switch (request.call) {
    case 'append':
      return journal.append(...request.args)
    case 'read':
      return journal.read(...request.args)
    case 'damagedOf':
      return journal.damagedOf(...request.args)
    case 'table':
    case 'held':
    case 'merge':
    case 'probe':
      return journal[request.call]()
  }
}

async function damagedOf(events: Parameters<Journal['damagedOf']>[0]): Promise<readonly string[]> {
  const { isIntact } = await import('../batch/seal')
  return events.filter((event) => !isIntact(event)).map((event) => event.id)
}

const reply = (message: JournalReply): void => self.postMessage(message)

const naming = (error: unknown): { name: string; message: string } =>
  error instanceof Error ? { name: error.name, message: error.message } : { name: 'Error', message: String(error) }
