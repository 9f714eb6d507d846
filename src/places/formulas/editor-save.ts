import type { App } from '../../app/app'
import { formSentenceOf } from '../../app/refusals/forms'
import type { Formula } from '../../batch/formula'
import { isoOf } from '../../batch/iso-of'
import type { FormulaDraft } from './draft'
import { draftKey } from './draft-keeping'
import type { ReadDraft } from './draft-read'

/** Makes the revision stand in the catalogue and lets the draft go. A sentence where that was refused, else null. */
export async function storeRevision(
  app: App,
  { id, from }: FormulaDraft,
  { head, revision }: ReadDraft,
): Promise<string | null> {
  const here = app.catalogue.formulas.value.get(id)
  const number = await numberFor(app, here, from)
  const at = isoOf(app.clock.nowMs(), app.clock.offsetMinutes())
  const approved = revision.approvedBy === undefined ? {} : { approvedAt: at }
  const others = here?.revisions.filter((each) => each.number !== number) ?? []
  const formula: Formula = {
    ...(here ?? {}),
    ...head,
    id,
    revisions: [...others, { ...revision, ...approved, number }],
  }
  const refused = await app.catalogue.save('formula', formula, revision.note)
  if (refused !== null) return formSentenceOf(refused)
  await app.drafts.write(draftKey(id), null)
  return null
}

/** A revision that a batch has used stays as it is; so does any but the last. The change then gets the next number. */
async function numberFor(app: App, here: Formula | undefined, from: number | null): Promise<number> {
  const last = Math.max(0, ...(here?.revisions.map(({ number }) => number) ?? []))
  if (here === undefined || from !== last) return last + 1
  const used = await app.catalogue.usedRevisions(here.id)
  return used.has(last) ? last + 1 : last
}
