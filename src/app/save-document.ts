import { savedDraft } from '../batch/document'
import { tipOf } from '../batch/event'
import type { EventLog, Family } from '../ports/event-log'
import { projectDocument } from './project'
import type { Refusal } from './refusals'
import { sealAll, type Writer } from './writer'

export interface SavingWorld {
  readonly log: EventLog
  readonly writer: Writer
  readonly by: () => string
}

/** Appends one version of a document, again where another page was faster. */
export async function saveDocument(
  { log, writer, by }: SavingWorld,
  family: Family,
  document: { readonly id: string },
  reason?: string,
): Promise<Refusal | null> {
  const stream = `${family}:${document.id}`
  for (let tries = 0; tries < 4; tries += 1) {
    const known = await log.read(stream)
    const tip = tipOf(known, writer.replica())
    const events = sealAll(writer, stream, [savedDraft(document, reason)], tip, by())
    const answer = await log.append({ events, after: tip.hash, projection: projectDocument(document) })
    switch (answer.state) {
      case 'recorded':
      case 'one-copy':
        return null
      case 'not-saved':
        return { code: answer.reason }
      case 'held':
        return { code: 'STORAGE_DEAD' }
      case 'conflict':
        break
    }
  }
  return { code: 'STORAGE_BUSY' }
}
