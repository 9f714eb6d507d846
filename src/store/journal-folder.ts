/** The part of a synchronous access handle that the journal uses; offsets and sizes in bytes. */
export interface JournalHandle {
  read(into: Uint8Array<ArrayBuffer>, options: { at: number }): number
  write(bytes: Uint8Array<ArrayBuffer>, options: { at: number }): number
  truncate(bytes: number): void
  getSize(): number
  flush(): void
  close(): void
}

/** A flat folder of files, of which each may be open for writing once. */
export interface JournalFolder {
  list(): Promise<readonly string[]>
  /** Opens for reading and writing; makes the file where there is none. */
  open(name: string): Promise<JournalHandle>
  size(name: string): Promise<number>
  /** Reads without opening for writing: works while another page writes the file. */
  read(name: string, from?: number, bytes?: number): Promise<Uint8Array>
  remove(name: string): Promise<void>
}

interface WithSyncHandle {
  createSyncAccessHandle(): Promise<JournalHandle>
}

/** The journal's folder in the origin's private file system. Only in a dedicated worker. */
export async function originFolder(): Promise<JournalFolder> {
  if (!('createSyncAccessHandle' in FileSystemFileHandle.prototype))
    throw new DOMException('No synchronous file handles here', 'NotSupportedError')
  const root = await navigator.storage.getDirectory()
  const folder = await root.getDirectoryHandle('journal', { create: true })
  const file = async (name: string) => (await folder.getFileHandle(name)).getFile()
  return {
    list: async () => {
      const names: string[] = []
      for await (const name of folder.keys()) names.push(name)
      return names
    },
    open: async (name) => {
      const handle = await folder.getFileHandle(name, { create: true })
      if (!canOpen(handle)) throw new DOMException('No synchronous file handles here', 'NotSupportedError')
      return handle.createSyncAccessHandle()
    },
    size: async (name) => (await file(name)).size,
    read: async (name, from = 0, bytes) => {
      const whole = await file(name)
      return new Uint8Array(await whole.slice(from, bytes === undefined ? undefined : from + bytes).arrayBuffer())
    },
    remove: (name) => folder.removeEntry(name),
  }
}

const canOpen = (handle: object): handle is WithSyncHandle => 'createSyncAccessHandle' in handle

/** Writes all of `bytes` and flushes; a short write throws, since the caller must not count on a part. */
export function writeThrough(handle: JournalHandle, bytes: Uint8Array, at: number): void {
  const written = handle.write(new Uint8Array(bytes), { at })
  if (written !== bytes.length) throw new DOMException('Only a part was written', 'QuotaExceededError')
  handle.flush()
}

export function joinBytes(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}
