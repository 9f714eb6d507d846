import * as v from 'valibot'

export const reworkKinds = ['add', 'mix', 'adjust', 'heat', 'cool', 'hold', 'measure', 'rest', 'fill', 'note'] as const
export type ReworkKind = (typeof reworkKinds)[number]

/** One step in the making. Everything is text, so that nothing typed is lost. */
export interface ReworkItem {
  readonly key: string
  readonly kind: ReworkKind
  readonly texts: Readonly<Record<string, string>>
}

export interface ReworkDraft {
  readonly items: readonly ReworkItem[]
  /** Why, what goes back, and into which vessel. */
  readonly whole: Readonly<Record<string, string>>
}

const texts = v.record(v.string(), v.string())
const draftSchema = v.object({
  items: v.array(v.object({ key: v.string(), kind: v.picklist(reworkKinds), texts })),
  whole: texts,
})

/** Nothing where none is kept, or one that this version does not read. */
export function draftIn(text: string | null): ReworkDraft | null {
  if (text === null) return null
  const read = v.safeParse(v.pipe(v.string(), v.parseJson(), draftSchema), text)
  return read.success ? read.output : null
}
