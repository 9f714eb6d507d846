import canonicalize from 'canonicalize'
import type { Formula, Revision } from '../../batch/formula'

/** Whether two documents say the same, whatever the order of their fields. */
export const sameDocument = (one: object, other: object): boolean => canonicalize(one) === canonicalize(other)

/**
 * A formula from a file beside the one that is here: all of our revisions stay as they are, those of the file that say
 * something else are put after them; a number that is taken gives way to the next free one.
 */
export function mergeFormula(here: Formula | undefined, brought: Formula): Formula {
  if (here === undefined) return brought
  const revisions: Revision[] = [...here.revisions]
  for (const revision of brought.revisions) {
    if (revisions.some((own) => sameRevision(own, revision))) continue
    const taken = revisions.some(({ number }) => number === revision.number)
    const next = Math.max(...revisions.map(({ number }) => number)) + 1
    revisions.push(taken ? { ...revision, number: next } : revision)
  }
  return { ...brought, revisions: revisions.toSorted((a, b) => a.number - b.number) }
}

/** What a revision says, its number aside. */
const sameRevision = (one: Revision, other: Revision): boolean =>
  sameDocument({ ...one, number: 0 }, { ...other, number: 0 })
