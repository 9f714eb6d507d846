import type { Event } from '../batch/event'
import type { HealReport } from '../ports/event-log'
import { addMissing, type Union } from './add-missing'
import { differences } from './compare-copies'
import type { Database } from './database'
import type { Project } from './head-row'
import { eventText } from './journal-line'
import type { Journal } from './journal-port'
import { ofStream } from './of-stream'
import { pause } from './pause'
import { sumsOf } from './sums-of'

export interface HealOptions {
  readonly db: Database
  readonly journal: Journal
  readonly loadProject: () => Promise<Project>
  /** Entries that the database got from the journal, as they arrive. */
  readonly onRestored: (events: readonly Event[]) => void
  /** Called once the database holds all that the journal has. */
  readonly onDatabaseWhole: () => void
  /** True where another page may be writing now: what its journal lacks may be on the way there. */
  readonly hasCompany: boolean
}

const streamsAtOnce = 50
const companyMs = 400

/** Compares the two copies by one row a stream and brings each up to the union of both. Says what it did. */
export async function healCopies(options: HealOptions): Promise<readonly HealReport[]> {
  const { db, journal } = options
  const table = await journal.table()
  const differing = differences(await sumsOf(db), table.streams)
  const sizes = new Map(table.streams.map(({ stream, count }) => [stream, count]))
  const touched = new Set<string>()
  const counts = { database: 0, journal: 0, conflicting: 0 }
  for (const streams of inRuns(differing.filter((stream) => sizes.has(stream)))) {
    const { added, conflicting } = await healDatabase(options, streams)
    counts.database += added.length
    counts.conflicting += conflicting
    for (const event of added) touched.add(event.stream)
  }
  options.onDatabaseWhole()
  for (const streams of inRuns(differing)) {
    const missing = await missingInJournal(options, streams)
    if (missing.length > 0) await journal.append(missing.map(eventText))
    counts.journal += missing.length
    for (const event of missing) touched.add(event.stream)
  }
  return reportsOf({ ...counts, streams: touched.size }, table.torn, table.damaged)
}

function* inRuns(streams: readonly string[]): Generator<readonly string[]> {
  for (let at = 0; at < streams.length; at += streamsAtOnce) yield streams.slice(at, at + streamsAtOnce)
}

async function healDatabase(
  { db, journal, loadProject, onRestored }: HealOptions,
  streams: readonly string[],
): Promise<Union> {
  const [copies, project] = await Promise.all([journal.read(streams), loadProject()])
  const union = await addMissing(db, new Map(streams.map((stream, index) => [stream, copies[index] ?? []])), project)
  if (union.added.length > 0) onRestored(union.added)
  return union
}

async function missingInJournal(
  { db, journal, hasCompany }: HealOptions,
  streams: readonly string[],
): Promise<readonly Event[]> {
  const entries = await Promise.all(streams.map((stream) => db.getAll('events', ofStream(stream))))
  const unknownOf = async (events: readonly Event[]) => {
    const known = new Set((await journal.read(streams)).flat().map((event) => event.hash))
    return events.filter((event) => !known.has(event.hash))
  }
  const missing = await unknownOf(entries.flat())
  if (missing.length === 0 || !hasCompany) return missing
  await pause(companyMs)
  return unknownOf(missing)
}

function reportsOf(
  counts: { database: number; journal: number; conflicting: number; streams: number },
  torn: number,
  damaged: number,
): readonly HealReport[] {
  const reports: HealReport[] = []
  const entries = counts.database + counts.journal
  const code = counts.database === 0 ? 'HEALED_JOURNAL' : counts.journal === 0 ? 'HEALED_DATABASE' : 'HEALED_BOTH'
  if (entries > 0) reports.push({ code, entries, streams: counts.streams })
  if (torn > 0) reports.push({ code: 'TORN_LINE', entries: torn, streams: 0 })
  const lost = damaged + counts.conflicting
  if (lost > 0) reports.push({ code: 'DAMAGED_ENTRY', entries: lost, streams: 0 })
  return reports
}
