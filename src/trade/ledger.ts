import type { Micrograms } from './mass'
import { accept, type Result, refuse } from './result'
import { shareOut } from './share-out'

/** Where mass ends that is no longer in a vessel or cup. */
export type Sink = 'evaporated' | 'sampled' | 'left-behind' | 'spilled' | 'discarded' | 'filled'

/**
 * One entry of mass. *transfer* moves everything but the residue, in proportion; the residue goes to the sink
 * 'left-behind'. *remove* takes every component in proportion, or one component alone (taken out of a cup).
 */
export type Movement =
  | { readonly kind: 'add'; readonly to: string; readonly component: string; readonly massUg: Micrograms }
  | { readonly kind: 'transfer'; readonly from: string; readonly to: string; readonly residueUg: Micrograms }
  | { readonly kind: 'evaporate'; readonly from: string; readonly component: string; readonly massUg: Micrograms }
  | {
      readonly kind: 'remove'
      readonly from: string
      readonly sink: Exclude<Sink, 'evaporated'>
      readonly massUg: Micrograms | 'all'
      readonly component?: string
    }
  /** What was filled goes back into a vessel, in proportion. */
  | { readonly kind: 'return'; readonly to: string; readonly massUg: Micrograms }

export type LedgerRefusal =
  | { readonly code: 'MASS_NOT_POSITIVE' }
  | { readonly code: 'MASS_NOT_WHOLE' }
  | { readonly code: 'MORE_THAN_HELD'; readonly askedUg: Micrograms; readonly heldUg: Micrograms }
  | { readonly code: 'SAME_VESSEL' }

/** The books of one batch. Callers read it through the functions below and change it through `post` alone. */
export interface Ledger {
  readonly vessels: Map<string, Account>
  readonly sinks: Map<Sink, Account>
  readonly added: Account
}

export interface Account {
  readonly masses: Map<string, Micrograms>
  totalUg: Micrograms
}

export const openLedger = (): Ledger => ({ vessels: new Map(), sinks: new Map(), added: openAccount() })

/**
 * Enters a movement in the ledger, which its caller owns, and gives the mass that moved (for a transfer without the
 * residue). A refused movement changes nothing. Always: added = in vessels + in sinks, to the microgram.
 */
export function post(ledger: Ledger, movement: Movement): Result<Micrograms, LedgerRefusal> {
  switch (movement.kind) {
    case 'add':
      return add(ledger, movement.to, movement.component, movement.massUg)
    case 'transfer':
      return transfer(ledger, movement.from, movement.to, movement.residueUg)
    case 'evaporate':
      return removeComponent(ledger, movement.from, 'evaporated', movement.component, movement.massUg)
    case 'remove':
      return movement.component === undefined
        ? removeInProportion(ledger, movement.from, movement.sink, movement.massUg)
        : removeComponent(ledger, movement.from, movement.sink, movement.component, movement.massUg)
    case 'return':
      return putBack(ledger, movement.to, movement.massUg)
  }
}

/** A copy of what a vessel or cup holds by component; nothing at zero. */
export const contentsOf = (ledger: Ledger, vessel: string): ReadonlyMap<string, Micrograms> =>
  new Map(ledger.vessels.get(vessel)?.masses)

export const massIn = (ledger: Ledger, vessel: string): Micrograms => ledger.vessels.get(vessel)?.totalUg ?? 0

/** What has gone to one sink, or to several together. */
export const inSink = (ledger: Ledger, ...sinks: readonly Sink[]): Micrograms =>
  sinks.reduce((sum, sink) => sum + (ledger.sinks.get(sink)?.totalUg ?? 0), 0)

export const addedInAll = (ledger: Ledger): Micrograms => ledger.added.totalUg

type Posted = Result<Micrograms, LedgerRefusal>

function add(ledger: Ledger, to: string, component: string, massUg: Micrograms): Posted {
  const bad = badMass(massUg, 1)
  if (bad) return refuse(bad)
  put(accountOf(ledger.vessels, to), component, massUg)
  put(ledger.added, component, massUg)
  return accept(massUg)
}

function transfer(ledger: Ledger, from: string, to: string, residueUg: Micrograms): Posted {
  if (from === to) return refuse({ code: 'SAME_VESSEL' })
  const heldUg = massIn(ledger, from)
  const bad = badMass(residueUg, 0) ?? moreThan(residueUg, heldUg)
  if (bad) return refuse(bad)
  const source = ledger.vessels.get(from)
  if (!source || heldUg === 0) return accept(0)
  takeInProportion(source, residueUg, accountOf(ledger.sinks, 'left-behind'))
  takeInProportion(source, source.totalUg, accountOf(ledger.vessels, to))
  return accept(heldUg - residueUg)
}

function removeInProportion(ledger: Ledger, from: string, sink: Sink, asked: Micrograms | 'all'): Posted {
  const heldUg = massIn(ledger, from)
  const massUg = asked === 'all' ? heldUg : asked
  const bad = badMass(massUg, asked === 'all' ? 0 : 1) ?? moreThan(massUg, heldUg)
  if (bad) return refuse(bad)
  const source = ledger.vessels.get(from)
  if (source && massUg > 0) takeInProportion(source, massUg, accountOf(ledger.sinks, sink))
  return accept(massUg)
}

function removeComponent(
  ledger: Ledger,
  from: string,
  sink: Sink,
  component: string,
  asked: Micrograms | 'all',
): Posted {
  const source = ledger.vessels.get(from)
  const heldUg = source?.masses.get(component) ?? 0
  const massUg = asked === 'all' ? heldUg : asked
  const bad = badMass(massUg, asked === 'all' ? 0 : 1) ?? moreThan(massUg, heldUg)
  if (bad) return refuse(bad)
  if (source && massUg > 0) move(source, accountOf(ledger.sinks, sink), component, massUg)
  return accept(massUg)
}

function putBack(ledger: Ledger, to: string, massUg: Micrograms): Posted {
  const bad = badMass(massUg, 1) ?? moreThan(massUg, inSink(ledger, 'filled'))
  if (bad) return refuse(bad)
  takeInProportion(accountOf(ledger.sinks, 'filled'), massUg, accountOf(ledger.vessels, to))
  return accept(massUg)
}

function takeInProportion(source: Account, massUg: Micrograms, target: Account): void {
  const components = [...source.masses.keys()]
  const shares = shareOut(massUg, [...source.masses.values()])
  components.forEach((component, index) => {
    move(source, target, component, shares[index] ?? 0)
  })
}

function move(source: Account, target: Account, component: string, massUg: Micrograms): void {
  if (massUg === 0) return
  put(source, component, -massUg)
  put(target, component, massUg)
}

function put(account: Account, component: string, massUg: Micrograms): void {
  const nowUg = (account.masses.get(component) ?? 0) + massUg
  if (nowUg === 0) account.masses.delete(component)
  else account.masses.set(component, nowUg)
  account.totalUg += massUg
}

function badMass(massUg: Micrograms, leastUg: 0 | 1): LedgerRefusal | undefined {
  if (!Number.isSafeInteger(massUg)) return { code: 'MASS_NOT_WHOLE' }
  return massUg < leastUg ? { code: 'MASS_NOT_POSITIVE' } : undefined
}

const moreThan = (askedUg: Micrograms, heldUg: Micrograms): LedgerRefusal | undefined =>
  askedUg > heldUg ? { code: 'MORE_THAN_HELD', askedUg, heldUg } : undefined

const openAccount = (): Account => ({ masses: new Map(), totalUg: 0 })

function accountOf<Key>(accounts: Map<Key, Account>, key: Key): Account {
  const known = accounts.get(key)
  if (known) return known
  const opened = openAccount()
  accounts.set(key, opened)
  return opened
}
