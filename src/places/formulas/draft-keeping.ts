import type { App } from '../../app/app'
import type { FormulaDraft } from './draft'

export const draftKey = (formulaId: string): string => `formula:${formulaId}`

/** A change of this formula that was begun and neither saved nor left. */
export async function keptDraft(drafts: App['drafts'], formulaId: string): Promise<FormulaDraft | null> {
  return draftFrom(await drafts.read(draftKey(formulaId)))
}

/** All formulas that were begun, the unsaved new ones among them. */
export async function keptDrafts(drafts: App['drafts']): Promise<readonly FormulaDraft[]> {
  const texts = await drafts.all('formula:')
  return [...texts.values()].flatMap((text) => draftFrom(text) ?? [])
}

/** Written by the editor alone; a text of an older shape is passed over. */
function draftFrom(text: string | null): FormulaDraft | null {
  if (text === null) return null
  try {
    const draft: Partial<FormulaDraft> | null = JSON.parse(text)
    const isWhole = draft?.head && draft.phases && draft.steps && draft.vessels && draft.checks && draft.id
    // Drafts of before there were shared limits have none.
    return isWhole ? ({ limits: [], ...draft } as FormulaDraft) : null
  } catch {
    return null
  }
}
