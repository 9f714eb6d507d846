import type { App } from '../../app/app'
import type { Balance, KeptVessel, Lot, Material, Person } from '../../batch/catalogue'
import type { Formula, Revision } from '../../batch/formula'
import type { Micrograms } from '../../trade/mass'
import type { Choice } from './choice'

/** What a set-up is made from: the formula and what the house has. */
export interface House {
  readonly formula: Formula
  readonly materials: ReadonlyMap<string, Material>
  readonly lots: ReadonlyMap<string, Lot>
  /** Null until the stock has been reckoned. */
  readonly onHand: ReadonlyMap<string, Micrograms> | null
  readonly balances: readonly Balance[]
  readonly vessels: readonly KeptVessel[]
  readonly people: readonly Person[]
  /** Who is at this tablet. */
  readonly person: Person | null
  readonly todayIso: string
  readonly decimalMark: '.' | ','
}

/** Null where there is no such formula. */
export function houseOf(app: App, formulaId: string, onHand: House['onHand'], todayIso: string): House | null {
  const { formulas, materials, lots, balances, vessels, people } = app.catalogue
  const formula = formulas.value.get(formulaId)
  if (!formula) return null
  const inUse = <T extends { readonly archived?: boolean }>(all: ReadonlyMap<string, T>) =>
    [...all.values()].filter(({ archived }) => !archived)
  return {
    formula,
    materials: materials.value,
    lots: lots.value,
    onHand,
    balances: inUse(balances.value),
    vessels: inUse(vessels.value),
    people: inUse(people.value),
    person: app.settings.person.value,
    todayIso,
    decimalMark: app.settings.decimalMark.value,
  }
}

/** The revision chosen, else the newest. */
export function revisionOf({ revisions }: Formula, { revision }: Choice): Revision | undefined {
  return revisions.find(({ number }) => number === revision) ?? [...revisions].sort((a, b) => b.number - a.number)[0]
}

export interface Team {
  readonly performs: Person
  readonly checks?: Person
  readonly others: readonly Person[]
}

/** Whoever is at the tablet weighs unless another is chosen; nobody checks their own work. */
export function teamOf(choice: Choice, { people, person }: House): Team | null {
  const performs = people.find(({ id }) => id === choice.performs) ?? person ?? people[0]
  if (!performs) return null
  const checks = people.find(({ id }) => id === choice.checks && id !== performs.id)
  const others = people.filter((each) => each !== checks && each.id !== performs.id)
  return { performs, ...(checks ? { checks } : {}), others }
}
