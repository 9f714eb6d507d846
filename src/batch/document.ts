import type { Draft } from './event'

/**
 * Streams of the catalogue (materials, lots, formulas, people, balances, vessels, templates, settings): each entry says the whole
 * document anew; the last one in fold order counts, the earlier ones are its trail.
 */
export interface DocumentSaved<T> {
  readonly document: T
  readonly reason?: string
}

export const documentKind = 'saved'

export const savedDraft = <T>(document: T, reason?: string): Draft<'saved', DocumentSaved<T>> => ({
  kind: documentKind,
  body: { document, ...(reason === undefined ? {} : { reason }) },
})
