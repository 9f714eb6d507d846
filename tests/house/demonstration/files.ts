import { createHash } from 'node:crypto'
import canonicalize from 'canonicalize'
import { isoOf } from '../../../src/batch/iso-of.ts'
import type { ArchiveHeader } from '../../../src/ports/archive.ts'
import type { Bench } from './bench.ts'
import { demonstrationCatalogue } from './catalogue.ts'
import { gelInHand, halfwayLotion } from './in-hand.ts'
import { lotionBatches } from './lotion-batches.ts'

/** What of a batch, or of a picture, goes into a file. */
type Kept = Pick<Bench, 'events' | 'nowMs'> & { readonly state: Pick<Bench['state'], 'stream'> }

/** Every batch of the demonstration, the ones in hand last. */
export const demonstrationBatches = (): readonly Bench[] => [...lotionBatches(), gelInHand(), halfwayLotion()]

/** The catalogue as JSON with one document a line: short, and a change shows where it is. */
export function catalogueText(): string {
  const { format, version, ...lists } = demonstrationCatalogue
  const parts = Object.entries(lists).map(([name, documents]) => {
    const lines = documents.map((document) => `    ${JSON.stringify(document)}`)
    return `  ${JSON.stringify(name)}: [\n${lines.join(',\n')}\n  ]`
  })
  return `{\n  "format": ${JSON.stringify(format)},\n  "version": ${version},\n${parts.join(',\n')}\n}\n`
}

/** An archive of the batches: a header line, then one entry a line, streams in the order of their names. */
export function batchesText(benches: readonly Kept[]): string {
  const inOrder = [...benches].sort((a, b) => (a.state.stream < b.state.stream ? -1 : 1))
  const lines = inOrder.flatMap(({ events }) => events.map((event) => `${canonicalize(event)}\n`)).join('')
  const header: ArchiveHeader = {
    format: 'pannikin',
    version: 1,
    madeAt: momentOf(benches),
    streams: benches.length,
    events: benches.reduce((sum, { events }) => sum + events.length, 0),
    sha256: createHash('sha256').update(lines).digest('hex'),
  }
  return `${JSON.stringify(header)}\n${lines}`
}

/** The moment the demonstration stands at: one minute after its newest entry. */
export function momentOf(benches: readonly Kept[]): string {
  const lastMs = Math.max(...benches.map(({ nowMs }) => nowMs))
  return isoOf(lastMs + 60_000, 0)
}

/** For what shows the demonstration at its own moment, such as a picture: when it is, and the batch to look at. */
export function momentText(benches: readonly Bench[]): string {
  const halfway = benches.at(-1)?.state.header
  return `${JSON.stringify({ halfway: momentOf(benches), batch: halfway?.id, step: 'b-emulsifier' }, null, 2)}\n`
}
