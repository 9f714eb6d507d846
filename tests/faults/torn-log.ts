/**
 * Makes Chromium lose a whole database without an error, as a process kill can: an incomplete record at the end of
 * the origin's LevelDB log. The next open reads and writes as if nothing were wrong, behind the torn record; the open
 * after that finds an empty database. Files in OPFS, localStorage and caches are left as they are.
 */
import { appendFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'

/** Tears the newest log of an origin; the browser must be closed. Answers its path, or undefined where there is none. */
export const tearLog = (userDataDir: string, origin: string): string | undefined => {
  const folder = join(userDataDir, 'Default', 'IndexedDB', `${databaseFolder(origin)}.indexeddb.leveldb`)
  const newest = logsIn(folder).at(-1)
  if (newest === undefined) return undefined
  const log = join(folder, newest)
  appendFileSync(log, tornRecord())
  return log
}

const databaseFolder = (origin: string): string => {
  const { protocol, hostname, port } = new URL(origin)
  return `${protocol.replace(':', '')}_${hostname}_${port === '' ? 0 : port}`
}

const logsIn = (folder: string): string[] => {
  try {
    return readdirSync(folder)
      .filter((name) => /^\d+\.log$/.test(name))
      .sort()
  } catch {
    return []
  }
}

/** A LevelDB record: checksum (4 bytes), length (2), type (1; 1 is "whole"), then the body, of which most is missing. */
const tornRecord = (): Buffer => {
  const promisedBytes = 604
  const presentBytes = 19
  const record = Buffer.alloc(7 + presentBytes)
  record.writeUInt32LE(0x12345678, 0)
  record.writeUInt16LE(promisedBytes, 4)
  record.writeUInt8(1, 6)
  return record
}
