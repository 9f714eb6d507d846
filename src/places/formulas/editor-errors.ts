import { type FieldErrors, isSaidWhileTyping } from '../../app/forms/read-fields'
import { formSentenceOf } from '../../app/refusals/forms'
import type { DraftErrors } from './draft-read'

/** Sentences by field. */
export type Sentences = Readonly<Record<string, string>>

export const noSentences: Sentences = {}

/** Sentences by part and field; of what is still empty only once Save was tried (`all`). */
export function sentencesOf(items: DraftErrors['items'], all: boolean): Readonly<Record<string, Sentences>> {
  return Object.fromEntries(Object.entries(items).map(([id, errors]) => [id, sentencesOfItem(errors, all)]))
}

/** Why Save could not even read the draft. */
export function unreadSentence({ items, document }: DraftErrors): string {
  if (document) return `${document.path} should be ${document.wanted}.`
  const count = Object.values(items).reduce((sum, errors) => sum + Object.keys(errors).length, 0)
  return count === 1
    ? 'One field is not right yet. It is marked below.'
    : `${count} fields are not right yet. They are marked below.`
}

/** The same object for the same errors, so that a row whose errors stay is not drawn again. */
const remembered = { all: new WeakMap<FieldErrors, Sentences>(), typing: new WeakMap<FieldErrors, Sentences>() }

function sentencesOfItem(errors: FieldErrors, all: boolean): Sentences {
  const known = all ? remembered.all : remembered.typing
  const before = known.get(errors)
  if (before !== undefined) return before
  const sentences = Object.fromEntries(
    Object.entries(errors)
      .filter(([, refusal]) => all || isSaidWhileTyping(refusal))
      .map(([key, refusal]) => [key, formSentenceOf(refusal)]),
  )
  known.set(errors, sentences)
  return sentences
}
