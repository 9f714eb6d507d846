import { batch, type Signal } from '@preact/signals'
import type { Catalogue, DocumentFamily, Documents } from './app'
import type { SavingWorld } from './append-to'
import { loadWriting } from './load-writing'
import { oneAtATime } from './one-at-a-time'

export type Shelves = { readonly [F in DocumentFamily]: Signal<ReadonlyMap<string, Documents[F]>> }

export interface CatalogueKeeper extends Pick<Catalogue, 'onHand' | 'save' | 'usedRevisions'> {
  readonly load: () => Promise<void>
}

/** Fills the shelves from the log, keeps them in step with it, and saves what goes on them. */
export function keepCatalogue(world: SavingWorld, shelves: Shelves): CatalogueKeeper {
  const { log } = world
  // Shelves has one for each family and no other.
  const families = Object.keys(shelves) as DocumentFamily[]

  const put = <F extends DocumentFamily>(family: F, documents: readonly Documents[F][]): void => {
    const shelf: Signal<ReadonlyMap<string, Documents[F]>> = shelves[family]
    const next = new Map(shelf.value)
    for (const document of documents) next.set(document.id, document)
    shelf.value = new Map([...next].sort(([, a], [, b]) => nameOf(a).localeCompare(nameOf(b))))
  }

  const loadFamily = async <F extends DocumentFamily>(family: F): Promise<void> => {
    const heads = await log.heads({ family })
    // Rows of these families are written by projectDocument alone.
    put(
      family,
      heads.flatMap((head) => (head.summary === null ? [] : [head.summary as Documents[F]])),
    )
  }

  const reloads = new Map(families.map((family) => [family as string, oneAtATime(() => loadFamily(family))]))
  log.onAppended((events) => {
    for (const family of new Set(events.map((event) => event.stream.split(':')[0] ?? ''))) reloads.get(family)?.()
  })

  return {
    load: async () => {
      await Promise.all(families.map((family) => loadFamily(family)))
    },
    onHand: async () => (await loadWriting()).onHandOf([...shelves.lot.value.values()], log),
    save: async (family, document, reason) => {
      const { saveDocument } = await loadWriting()
      const refusal = await saveDocument(world, family, document, reason)
      if (refusal === null) batch(() => put(family, [document]))
      return refusal
    },
    usedRevisions: async (formulaId) => (await loadWriting()).usedRevisionsOf(formulaId, log),
  }
}

const nameOf = (document: Documents[DocumentFamily]): string => ('name' in document ? document.name : document.code)
