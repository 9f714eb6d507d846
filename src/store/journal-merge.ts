import { type JournalFolder, joinBytes, writeThrough } from './journal-folder'
import type { JournalLine } from './journal-line'
import {
  emptyRow,
  isPack,
  type Manifest,
  type ManifestStream,
  packName,
  withLine,
  writeManifest,
} from './journal-manifest'

const fullPackBytes = 32 * 1024 * 1024
const unreadFile = 'unread.log'

/** What the files to be merged hold. */
export interface MergeSource {
  readonly names: readonly string[]
  readonly lines: readonly JournalLine[]
  readonly unread: readonly Uint8Array[]
  /** Files merged earlier that could not be deleted yet. */
  readonly stuck: readonly string[]
  /** The manifest was made from the packs, and must be written even where there is nothing new. */
  readonly isRebuilt: boolean
}

/**
 * Moves whole page files into the packs: write, flush, read again, compare, switch the manifest, then delete the
 * files. A cut at any point leaves either the files or a manifest that names them. `known` are the hashes that the
 * streams concerned have in the packs already.
 */
export async function mergeFiles(
  folder: JournalFolder,
  manifest: Manifest,
  source: MergeSource,
  known: ReadonlySet<string>,
): Promise<number> {
  await keepUnread(folder, source.unread)
  const lines = newLines(source.lines, known)
  if (lines.length > 0 || source.isRebuilt) {
    const merged = [...source.stuck, ...source.names]
    await writeManifest(folder, { ...(await packLines(folder, manifest, lines)), merged })
  }
  await removeFiles(folder, source.names)
  return lines.length
}

/** Deletes what it can; the names of those that are still open somewhere. */
export async function removeFiles(folder: JournalFolder, names: readonly string[]): Promise<readonly string[]> {
  const stuck: string[] = []
  for (const name of names) await folder.remove(name).catch(() => stuck.push(name))
  return stuck
}

/** Lines of one stream stand together; each entry once. */
function newLines(lines: readonly JournalLine[], known: ReadonlySet<string>): readonly JournalLine[] {
  const seen = new Set(known)
  const byStream = new Map<string, JournalLine[]>()
  for (const line of lines) {
    const { entry } = line
    if (entry.kind === 'event' && seen.has(entry.event.hash)) continue
    if (entry.kind === 'event') seen.add(entry.event.hash)
    const group = entry.kind === 'event' ? entry.event.stream : ''
    const row = byStream.get(group)
    if (row) row.push(line)
    else byStream.set(group, [line])
  }
  return [...byStream.values()].flat()
}

async function packLines(
  folder: JournalFolder,
  manifest: Manifest,
  lines: readonly JournalLine[],
): Promise<Omit<Manifest, 'merged'>> {
  const pack = packFor(manifest)
  const start = manifest.packs[pack] ?? 0
  const rows = new Map<string, ManifestStream>(manifest.streams.map((row) => [row.stream, row]))
  const held = [...manifest.held]
  const released = [...manifest.released]
  let at = start
  for (const { entry, bytes } of lines) {
    const segment = { pack, at, bytes: bytes.length }
    if (entry.kind === 'event') {
      const { stream, hash } = entry.event
      rows.set(stream, withLine(rows.get(stream) ?? emptyRow(stream), hash, segment))
    } else if (entry.kind === 'held') held.push(entry.held)
    else released.push(entry.id)
    at += bytes.length
  }
  await writePack(folder, pack, start, joinBytes(lines.map((line) => line.bytes)))
  return {
    generation: manifest.generation + 1,
    packs: { ...manifest.packs, [pack]: at },
    streams: [...rows.values()],
    held: held.filter((one) => !released.includes(one.id)),
    released,
  }
}

function packFor(manifest: Manifest): string {
  const names = Object.keys(manifest.packs).filter(isPack)
  const last = packName(Math.max(0, names.length - 1))
  return (manifest.packs[last] ?? 0) < fullPackBytes ? last : packName(names.length)
}

async function writePack(folder: JournalFolder, name: string, at: number, bytes: Uint8Array): Promise<void> {
  if (bytes.length === 0) return
  const handle = await folder.open(name)
  try {
    handle.truncate(at)
    writeThrough(handle, bytes, at)
    const again = new Uint8Array(bytes.length)
    handle.read(again, { at })
    if (again.some((byte, index) => byte !== bytes[index]))
      throw new DOMException('A merged line reads back changed', 'DataError')
  } finally {
    handle.close()
  }
}

/** What cannot be read here is kept to the letter: another version may read it. */
async function keepUnread(folder: JournalFolder, unread: readonly Uint8Array[]): Promise<void> {
  if (unread.length === 0) return
  const handle = await folder.open(unreadFile)
  try {
    writeThrough(handle, joinBytes(unread.flatMap((part) => [part, Uint8Array.of(0x0a)])), handle.getSize())
  } finally {
    handle.close()
  }
}
