import type { Balance, Lot } from '../../../src/batch/catalogue.ts'
import type { Formula, Line, Revision, VesselNeed } from '../../../src/batch/formula.ts'
import type { BatchHeader, BatchVessel, WeighMode } from '../../../src/batch/header.ts'
import { fractionsOf } from '../../../src/batch/schemas/check-revision.ts'
import type { Micrograms } from '../../../src/trade/mass.ts'
import { balances, people } from './equipment.ts'
import { lots } from './lots.ts'
import { g } from './mass.ts'
import { materials } from './materials.ts'

export interface HeaderWishes {
  readonly id: string
  readonly number: number
  readonly sizeUg: Micrograms
  readonly mode?: WeighMode
  /** ISO date of the batch: lots that were not there yet or had run out are left out. */
  readonly on: string
  readonly performs?: string
  readonly checks?: string
  readonly ambientC?: number
  /** Lots that earlier batches have emptied. */
  readonly empty?: ReadonlySet<string>
}

/** The header of a demonstration batch: the oldest usable lot of each line, the finest balance that holds it. */
export function headerOf(formula: Formula, wishes: HeaderWishes): BatchHeader {
  const revision = newestOf(formula)
  const lines = revision.phases.flatMap((phase) => phase.lines)
  const used = new Set(lines.map((line) => line.materialId))
  const three = String(wishes.number).padStart(3, '0')
  const massUg = massesOf(lines, wishes.sizeUg)
  return {
    id: wishes.id,
    code: `${formula.code}-${three}`,
    shortName: `${formula.nickname} ${three}`,
    formulaId: formula.id,
    formulaCode: formula.code,
    formulaName: formula.name,
    contact: formula.contact,
    revision,
    sizeUg: wishes.sizeUg,
    mode: wishes.mode ?? 'as-you-go',
    vessels: revision.vessels.map((need) => vesselFor(need, wishes.sizeUg)),
    materials: materials.filter((material) => used.has(material.id)),
    lots: lines.map((line) => ({ line: line.id, lots: usableLots(line, wishes).slice(0, 1) })),
    balances,
    balanceOfLine: lines.map((line) => ({ line: line.id, balance: balanceFor(line, massUg).id })),
    people: peopleOf(wishes),
    kept: [],
    ambientC: wishes.ambientC ?? 21,
  }
}

export function newestOf(formula: Formula): Revision {
  const newest = formula.revisions.at(-1)
  if (newest === undefined) throw new Error(`${formula.code} has no revision`)
  return newest
}

function usableLots(line: Line, { on, empty }: HeaderWishes): Lot[] {
  return lots
    .filter((lot) => lot.materialId === line.materialId && lot.status === 'released' && !empty?.has(lot.id))
    .filter((lot) => (lot.receivedOn ?? '') <= on && on <= (lot.expires ?? '9999'))
    .sort((a, b) => ((a.expires ?? '') < (b.expires ?? '') ? -1 : 1))
}

/** What each line comes to, near enough to choose a balance by. */
function massesOf(lines: readonly Line[], sizeUg: Micrograms): ReadonlyMap<string, Micrograms> {
  const { qs } = fractionsOf(lines)
  return new Map(
    lines.map(({ id, amount }) => {
      const fraction = amount.kind === 'fraction' ? amount.fraction : amount.kind === 'qs' ? (qs ?? 0) : amount.expected
      return [id, Math.round(fraction * sizeUg)]
    }),
  )
}

/** Small additions on the fine balance, what is beyond a fifth of its range on the next. */
function balanceFor(line: Line, massUg: ReadonlyMap<string, Micrograms>): Balance {
  const neededUg = massUg.get(line.id) ?? 0
  const fitting = balances.find(({ capacityUg }) => neededUg * 5 <= capacityUg)
  const largest = balances.at(-1)
  if (largest === undefined) throw new Error('no balance')
  return fitting ?? largest
}

/** Tares a little apart from vessel to vessel, as glass is. */
const tares: Readonly<Record<string, number>> = {
  main: 312.46,
  oil: 98.21,
  slurry: 41.07,
  'cool-cup': 36.52,
  'powder-cup': 36.48,
  'clear-cup': 41.12,
  'hold-beaker': 49.35,
  'benzoate-cup': 36.55,
  'sorbate-cup': 36.49,
  'fragrance-beaker': 98.34,
}

const roomOf = (need: VesselNeed, sizeUg: Micrograms): Micrograms => {
  if (need.id === 'main') return g(Math.max(800, Math.ceil((1.6 * sizeUg) / g(100)) * 100))
  return Math.max(need.kind === 'cup' ? g(60) : g(250), Math.round(sizeUg / 4 / g(10)) * g(10))
}

/** A propeller reaches the bottom fifth; above nine tenths it turns nothing over. */
const stirredIn = (roomUg: Micrograms): { readonly min: Micrograms; readonly max: Micrograms } => ({
  min: Math.round(0.2 * roomUg),
  max: Math.round(0.9 * roomUg),
})

const vesselFor = (need: VesselNeed, sizeUg: Micrograms): BatchVessel => ({
  id: need.id,
  name: need.name,
  kind: need.kind,
  tareUg: g(tares[need.id] ?? 40),
  capacityUg: roomOf(need, sizeUg),
  ...(need.id === 'main' ? { stirsUg: stirredIn(roomOf(need, sizeUg)) } : {}),
  ...(need.holds === undefined ? {} : { standsIn: need.holds }),
  ...(need.openLifeMinutes === undefined ? {} : { openLifeMinutes: need.openLifeMinutes }),
})

function peopleOf({ performs = 'person-rk', checks = 'person-jt' }: HeaderWishes): BatchHeader['people'] {
  const find = (id: string) => {
    const person = people.find((each) => each.id === id)
    if (person === undefined) throw new Error(`nobody is called ${id}`)
    return person
  }
  return {
    performs: find(performs),
    checks: find(checks),
    others: people.filter(({ id }) => id !== performs && id !== checks),
  }
}
