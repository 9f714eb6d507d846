import { signal } from '@preact/signals'
import type { Catalogue } from './app'
import type { SavingWorld } from './append-to'
import type { CatalogueKeeper, Shelves } from './keep-catalogue'
import { loadAfterFirst } from './load-after-first'

export interface KeptCatalogue extends Catalogue {
  readonly load: () => Promise<void>
}

/**
 * The catalogue's documents, each a stream of its own; every save is an entry, and the last one counts. Empty until
 * it is loaded, with what keeps it, after the first screen.
 */
export function createCatalogue(world: SavingWorld): KeptCatalogue {
  const loaded = signal(false)
  const shelves: Shelves = {
    material: signal(new Map()),
    lot: signal(new Map()),
    formula: signal(new Map()),
    person: signal(new Map()),
    balance: signal(new Map()),
    vessel: signal(new Map()),
  }
  let keeping: Promise<CatalogueKeeper> | undefined
  const keeper = (): Promise<CatalogueKeeper> => {
    keeping ??= loadAfterFirst().then(({ keepCatalogue }) => keepCatalogue(world, shelves))
    return keeping
  }

  return {
    loaded,
    load: async () => {
      await (await keeper()).load()
      loaded.value = true
    },
    materials: shelves.material,
    lots: shelves.lot,
    formulas: shelves.formula,
    people: shelves.person,
    balances: shelves.balance,
    vessels: shelves.vessel,
    onHand: async () => (await keeper()).onHand(),
    save: async (...document) => (await keeper()).save(...document),
    usedRevisions: async (formulaId) => (await keeper()).usedRevisions(formulaId),
  }
}
