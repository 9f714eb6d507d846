/** Appends a line to a file of this origin, flushes it, and says so: what the journal does, and nothing else. */
const opened = navigator.storage
  .getDirectory()
  .then((root) => root.getFileHandle('floor', { create: true }))
  .then((file) => file.createSyncAccessHandle())

self.addEventListener('message', async ({ data }: MessageEvent<string>) => {
  const handle = await opened
  handle.write(new TextEncoder().encode(`${data}\n`), { at: handle.getSize() })
  handle.flush()
  self.postMessage('flushed')
})
