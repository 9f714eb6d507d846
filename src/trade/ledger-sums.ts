import type { Ledger, Sink } from './ledger'
import type { Micrograms } from './mass'

/** Every vessel and cup that has held something, in the order of first use. */
export const vesselsOf = (ledger: Ledger): readonly string[] => [...ledger.vessels.keys()]

export const sinkContents = (ledger: Ledger, sink: Sink): ReadonlyMap<string, Micrograms> =>
  new Map(ledger.sinks.get(sink)?.masses)

export const addedOf = (ledger: Ledger, component: string): Micrograms => ledger.added.masses.get(component) ?? 0

/** What stands in all vessels and cups together. */
export function heldInAll(ledger: Ledger): Micrograms {
  let heldUg = 0
  for (const account of ledger.vessels.values()) heldUg += account.totalUg
  return heldUg
}
