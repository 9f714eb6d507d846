import { savedDraft } from '../batch/document'
import type { Family } from '../ports/event-log'
import { appendTo, type SavingWorld } from './append-to'
import { projectDocument } from './project'
import type { Refusal } from './refusals'

/** Appends one version of a document. */
export const saveDocument = (
  world: SavingWorld,
  family: Family,
  document: { readonly id: string },
  reason?: string,
): Promise<Refusal | null> =>
  appendTo(world, `${family}:${document.id}`, savedDraft(document, reason), () => projectDocument(document))
