import type { App } from '../app'
import { loadSentences, type Refusal, sentenceOf } from '../refusals'
import { importSentences } from '../refusals/forms-import'
import { sayFrom } from '../refusals/sentences'
import { importDocuments } from './import-documents'
import { unpackArchive } from './unpack-archive'

export interface DemonstrationFiles {
  readonly catalogueUrl: string
  readonly batchesUrl: string
  /** Who is at the tablet in the demonstration, an id of its catalogue. */
  readonly person: string
  readonly studio: string
}

/** Brings the demonstration in through the same doors as any other file: documents first, then batches. */
export async function loadDemonstration(app: App, files: DemonstrationFiles): Promise<Refusal | null> {
  const [catalogue, batches] = await Promise.all([blobOf(files.catalogueUrl), blobOf(files.batchesUrl)])
  if (catalogue === null || batches === null)
    return failed('its files are not on this tablet. Go online once and reload.')
  const documents = await importDocuments(app, catalogue)
  if (!documents.ok) return failed(sayFrom(importSentences, documents.refusal))
  const archive = await app.archive()
  const applied = await archive.apply(new Blob([unpackArchive(await batches.text())]))
  if (!applied.ok) {
    await loadSentences()
    return failed(sentenceOf(applied.refusal))
  }
  const { person, studio } = app.settings.value.value
  await app.settings.change({ person: person || files.person, studio: studio || files.studio })
  return null
}

const failed = (why: string): Refusal => ({ code: 'DEMONSTRATION_FAILED', why })

async function blobOf(url: string): Promise<Blob | null> {
  try {
    const answer = await fetch(url)
    return answer.ok ? await answer.blob() : null
  } catch {
    return null
  }
}
