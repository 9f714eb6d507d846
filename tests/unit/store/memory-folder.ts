import type { JournalFolder, JournalHandle } from '../../../src/store/journal-folder'

/** A folder of files in memory that can be cut off, like a page that dies, and torn, like a file it left behind. */
export interface MemoryFolder extends JournalFolder {
  readonly files: Map<string, Uint8Array>
  /** From the n-th change on nothing more is done: every change throws, as if the page had died there. */
  dieAfter(changes: number): void
  /** A new life: what was written is there, and open files are closed. */
  revive(): void
  /** How many changes were made since the last life began. */
  changes(): number
}

export function memoryFolder(): MemoryFolder {
  const files = new Map<string, Uint8Array>()
  const open = new Set<string>()
  let changes = 0
  let limit = Number.POSITIVE_INFINITY

  const change = () => {
    if (changes >= limit) throw new DOMException('The page is gone', 'InvalidStateError')
    changes += 1
  }
  const content = (name: string): Uint8Array => {
    const bytes = files.get(name)
    if (!bytes) throw new DOMException(name, 'NotFoundError')
    return bytes
  }

  function handleOf(name: string): JournalHandle {
    return {
      read(into, { at }) {
        const part = content(name).subarray(at, at + into.length)
        into.set(part)
        return part.length
      },
      write(bytes, { at }) {
        change()
        const before = content(name)
        const after = new Uint8Array(Math.max(before.length, at + bytes.length))
        after.set(before)
        after.set(bytes, at)
        files.set(name, after)
        return bytes.length
      },
      truncate(bytes) {
        change()
        files.set(name, content(name).slice(0, bytes))
      },
      getSize: () => content(name).length,
      flush: () => undefined,
      close: () => void open.delete(name),
    }
  }

  return {
    files,
    dieAfter: (count) => {
      changes = 0
      limit = count
    },
    revive: () => {
      limit = Number.POSITIVE_INFINITY
      changes = 0
      open.clear()
    },
    changes: () => changes,
    list: async () => [...files.keys()],
    open: async (name) => {
      if (open.has(name)) throw new DOMException(name, 'NoModificationAllowedError')
      change()
      open.add(name)
      if (!files.has(name)) files.set(name, new Uint8Array())
      return handleOf(name)
    },
    size: async (name) => content(name).length,
    read: async (name, from = 0, bytes) => content(name).slice(from, bytes === undefined ? undefined : from + bytes),
    remove: async (name) => {
      change()
      if (open.has(name)) throw new DOMException(name, 'NoModificationAllowedError')
      files.delete(name)
    },
  }
}
