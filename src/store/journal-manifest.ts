import type { HeldIntention } from '../ports/event-log'
import { emptySum, mixSum } from './checksum'
import { type JournalFolder, writeThrough } from './journal-folder'
import { decodeJournal, decodeLine, encodeLine } from './journal-line'
import type { StreamSum } from './journal-port'

/** A run of whole lines of one stream inside a pack file. */
export interface Segment {
  readonly pack: string
  readonly at: number
  readonly bytes: number
}

export interface ManifestStream extends StreamSum {
  readonly segments: readonly Segment[]
}

/** What has been merged so far. Bytes of a pack beyond `packs[name]` are leftovers of a merge that was cut off. */
export interface Manifest {
  readonly generation: number
  readonly packs: Readonly<Record<string, number>>
  readonly streams: readonly ManifestStream[]
  readonly held: readonly HeldIntention[]
  readonly released: readonly string[]
  /** Page files that are wholly in here, and may still be there. */
  readonly merged: readonly string[]
}

const slots = ['manifest-a', 'manifest-b'] as const
const nothing: Manifest = { generation: 0, packs: {}, streams: [], held: [], released: [], merged: [] }

export const packName = (number: number): string => `pack.${number}.log`
export const isPack = (name: string): boolean => /^pack\.\d+\.log$/.test(name)

export interface FoundManifest {
  readonly manifest: Manifest
  /** Hashes of all merged entries where the packs had to be read; null where a manifest told about them. */
  readonly packed: ReadonlySet<string> | null
}

/** What the two slots hold: null for one that is damaged, undefined for one that was never written. */
export type FoundSlots = readonly (Manifest | null | undefined)[]

export const readSlots = (folder: JournalFolder): Promise<FoundSlots> =>
  Promise.all(slots.map((slot) => readSlot(folder, slot)))

/**
 * The newer of the two slots. Where one of them is damaged it may have been the newer one, and the other does not know
 * of the last merge, whose files are gone: then the packs themselves are read.
 */
export async function manifestOf(
  folder: JournalFolder,
  names: readonly string[],
  found: FoundSlots,
): Promise<FoundManifest> {
  const present = found.filter((manifest) => manifest !== undefined)
  const newest = present.filter((manifest) => manifest !== null).sort((a, b) => b.generation - a.generation)[0]
  const isWhole = !present.includes(null) && (present.length === slots.length || newest?.generation === 1)
  if (newest && isWhole) return { manifest: newest, packed: null }
  const packs = names.filter(isPack)
  return packs.length > 0 ? rebuild(folder, packs, newest?.generation ?? 0) : { manifest: nothing, packed: null }
}

/** Writes the slot that does not hold the present generation, so that one whole manifest stands at any moment. */
export async function writeManifest(folder: JournalFolder, manifest: Manifest): Promise<void> {
  const handle = await folder.open(manifest.generation % 2 === 0 ? slots[0] : slots[1])
  try {
    const line = encodeLine(JSON.stringify(manifest))
    handle.truncate(0)
    writeThrough(handle, line, 0)
  } finally {
    handle.close()
  }
}

async function readSlot(folder: JournalFolder, slot: string): Promise<Manifest | null | undefined> {
  const bytes = await folder.read(slot).catch((error: unknown) => {
    if (error instanceof DOMException && error.name === 'NotFoundError') return undefined
    throw error
  })
  if (bytes === undefined) return undefined
  const value = decodeLine(bytes)
  return typeof value === 'object' && value !== null && 'generation' in value ? (value as Manifest) : null
}

/** Reads every pack line by line. The generation is the last one known, so that the damaged slot is written next. */
async function rebuild(folder: JournalFolder, packs: readonly string[], generation: number): Promise<FoundManifest> {
  const streams = new Map<string, ManifestStream>()
  const sizes: Record<string, number> = {}
  const seen = new Set<string>()
  const held: HeldIntention[] = []
  const released: string[] = []
  for (const pack of packs) {
    const bytes = await folder.read(pack)
    const { lines, torn } = decodeJournal(bytes)
    sizes[pack] = bytes.length - (torn?.length ?? 0)
    for (const { entry, bytes: line } of lines) {
      if (entry.kind === 'held') held.push(entry.held)
      if (entry.kind === 'released') released.push(entry.id)
      if (entry.kind !== 'event' || seen.has(entry.event.hash)) continue
      const { stream, hash } = entry.event
      seen.add(hash)
      const segment = { pack, at: line.byteOffset - bytes.byteOffset, bytes: line.length }
      streams.set(stream, withLine(streams.get(stream) ?? emptyRow(stream), hash, segment))
    }
  }
  const manifest = { ...nothing, generation, packs: sizes, streams: [...streams.values()], held, released }
  return { manifest, packed: seen }
}

export const emptyRow = (stream: string): ManifestStream => ({ stream, count: 0, sum: emptySum, segments: [] })

/** The row after one line more; a line that follows the last one directly makes its segment longer. */
export function withLine(row: ManifestStream, hash: string, line: Segment): ManifestStream {
  const last = row.segments.at(-1)
  const joins = last !== undefined && last.pack === line.pack && last.at + last.bytes === line.at
  const segments = joins
    ? [...row.segments.slice(0, -1), { ...last, bytes: last.bytes + line.bytes }]
    : [...row.segments, line]
  return { stream: row.stream, count: row.count + 1, sum: mixSum(row.sum, hash), segments }
}
