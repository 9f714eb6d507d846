import { batch, type Signal, signal } from '@preact/signals'
import type { Catalogue, DocumentFamily, Documents } from './app'
import type { SavingWorld } from './append-to'
import { loadWriting } from './load-writing'
import { oneAtATime } from './one-at-a-time'

export interface KeptCatalogue extends Catalogue {
  readonly load: () => Promise<void>
}

const families: readonly DocumentFamily[] = ['material', 'lot', 'formula', 'person', 'balance', 'vessel']

type Shelves = { readonly [F in DocumentFamily]: Signal<ReadonlyMap<string, Documents[F]>> }

/** The catalogue's documents, each a stream of its own; every save is an entry, and the last one counts. */
export function createCatalogue(world: SavingWorld): KeptCatalogue {
  const { log } = world
  const loaded = signal(false)
  const shelves: Shelves = {
    material: signal(new Map()),
    lot: signal(new Map()),
    formula: signal(new Map()),
    person: signal(new Map()),
    balance: signal(new Map()),
    vessel: signal(new Map()),
  }

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

  const load = async (): Promise<void> => {
    await Promise.all(families.map((family) => loadFamily(family)))
    loaded.value = true
  }

  const reloads = new Map(families.map((family) => [family as string, oneAtATime(() => loadFamily(family))]))
  log.onAppended((events) => {
    for (const family of new Set(events.map((event) => event.stream.split(':')[0] ?? ''))) reloads.get(family)?.()
  })

  return {
    loaded,
    load,
    materials: shelves.material,
    lots: shelves.lot,
    formulas: shelves.formula,
    people: shelves.person,
    balances: shelves.balance,
    vessels: shelves.vessel,
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
