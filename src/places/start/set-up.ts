import type { Balance, Material } from '../../batch/catalogue'
import type { Finding } from '../../batch/finding'
import type { Revision } from '../../batch/formula'
import type { BatchHeader } from '../../batch/header'
import { finestFor, loadsOf } from '../../batch/loads'
import type { Plan } from '../../batch/plan'
import { type PlanRefusal, planBatch } from '../../batch/plan-batch'
import { preflightOf } from '../../batch/preflight'
import type { Premixed } from '../../batch/premix'
import type { Micrograms } from '../../trade/mass'
import type { Result } from '../../trade/result'
import type { Choice } from './choice'
import { type House, revisionOf, teamOf } from './house'
import { proposedLots, type ShelfLot, shelfOf } from './lots'
import { mixingsOf, premixedOf, premixLots, withMixingWords, withPremixStock } from './premixes'
import { type VesselRow, vesselRows } from './vessels'

/** A batch as it would be opened now. */
export interface SetUp {
  readonly revision: Revision
  readonly vessels: readonly VesselRow[]
  /** By line. */
  readonly shelves: ReadonlyMap<string, readonly ShelfLot[]>
  readonly header: BatchHeader
  readonly plan: Result<Plan, PlanRefusal>
  readonly findings: readonly Finding[]
}

/** The bench name of what a line is weighed as; its id where nothing is planned. */
export const nameOfLine = ({ plan }: SetUp, line: string): string =>
  (plan.ok ? plan.value.lines.get(line)?.material.name : undefined) ?? line

/** Reckons with single micrograms and any load: to see what will stand where before the balances are chosen. */
const reckoner: Balance = {
  id: 'reckoner',
  name: '',
  stepUg: 1,
  capacityUg: Number.MAX_SAFE_INTEGER,
  repeatabilityUg: 1,
}

/** Null where nobody can weigh or the formula has no revision. Names and code are put in when the batch is opened. */
export function setUpOf(choice: Choice, sizeUg: Micrograms, house: House): SetUp | null {
  const revision = revisionOf(house.formula, choice)
  const people = teamOf(choice, house)
  if (!revision || !people) return null
  const shelves = shelvesOf(revision, house)
  const neatLots = lotsOf(choice, shelves)
  const mixed = premixedOf(revision, choice, house.materials, neatLots)
  const materials = new Map([...house.materials, ...mixed.materials.map((each) => [each.id, each] as const)])
  const bare: BatchHeader = {
    id: '',
    code: '',
    shortName: '',
    formulaId: house.formula.id,
    formulaCode: house.formula.code,
    formulaName: house.formula.name,
    contact: house.formula.contact,
    revision: mixed.revision,
    sizeUg,
    mode: choice.mode,
    vessels: vesselRows(mixed.revision.vessels, choice, [], new Map(), []).map(({ vessel }) => vessel),
    materials: materialsOf(mixed.revision, materials),
    lots: premixLots(neatLots, mixed, []),
    balances: [reckoner],
    balanceOfLine: [],
    people,
    kept: [],
    ...ambientOf(choice),
    ...(mixed.premixes.length > 0 ? { premixes: mixed.premixes } : {}),
  }
  const rough = planBatch(bare)
  const peaks = rough.ok ? loadsOf(rough.value).inVessel : new Map<string, Micrograms>()
  const vessels = vesselRows(mixed.revision.vessels, choice, house.vessels, peaks, house.balances)
  const weighed: BatchHeader = {
    ...bare,
    vessels: vessels.map(({ vessel }) => vessel),
    balances: house.balances,
    balanceOfLine: rough.ok ? balancesOf(choice, rough.value, vessels, house.balances) : [],
  }
  const first = rough.ok ? planBatch(weighed) : rough
  const header =
    first.ok && mixed.premixes.length > 0 ? mixedHeader(weighed, neatLots, mixed, first.value, house) : weighed
  const plan = header === weighed ? first : planBatch(header)
  const inStore = house.onHand ?? new Map([...house.lots.values()].map((lot) => [lot.id, lot.receivedUg]))
  const onHand = withPremixStock(inStore, header.lots)
  const findings = plan.ok ? preflightOf(header, plan.value, onHand, house.todayIso) : []
  const kept = [...stillKept(choice, findings), ...header.kept]
  return { revision, vessels, shelves, header: { ...header, kept }, plan, findings }
}

/** With what each dilution is made of: in the lots, in the step that makes it, and among what the record keeps. */
function mixedHeader(
  header: BatchHeader,
  lots: BatchHeader['lots'],
  mixed: Premixed,
  plan: Plan,
  house: House,
): BatchHeader {
  const mixings = mixingsOf(mixed, plan, house.materials)
  return {
    ...header,
    revision: withMixingWords(header.revision, mixings, house.decimalMark),
    lots: premixLots(lots, mixed, mixings),
    kept: mixed.premixes.map(({ line, into, oneIn }) => {
      const name = plan.lines.get(into)?.material.name ?? into
      return { code: 'PRE_MIXED', about: line, reason: `1 in ${oneIn} in ${name}, which gives way to it` }
    }),
  }
}

/** The finest balance that carries the vessel and what will be in it, unless the person chose another one. */
function balancesOf(choice: Choice, plan: Plan, rows: readonly VesselRow[], balances: readonly Balance[]) {
  const vessels = new Map(plan.vessels)
  for (const { vessel } of rows) vessels.set(vessel.id, vessel)
  const { onBalance } = loadsOf({ ...plan, vessels })
  return [...plan.lines.keys()].flatMap((line) => {
    const chosen = balances.find(({ id }) => id === choice.balances[line])
    const balance = chosen ?? finestFor(onBalance.get(line) ?? 0, balances)
    return balance ? [{ line, balance: balance.id }] : []
  })
}

function shelvesOf(revision: Revision, { lots, onHand, todayIso }: House): ReadonlyMap<string, readonly ShelfLot[]> {
  const all = [...lots.values()]
  return new Map(
    linesOf(revision).map(({ id, materialId }) => [id, shelfOf(materialId, all, onHand, todayIso)] as const),
  )
}

function lotsOf(choice: Choice, shelves: ReadonlyMap<string, readonly ShelfLot[]>): BatchHeader['lots'] {
  return [...shelves].map(([line, shelf]) => {
    const chosen = choice.lots[line]?.filter((id) => shelf.some(({ lot }) => lot.id === id)) ?? proposedLots(shelf)
    return { line, lots: chosen.flatMap((id) => shelf.filter(({ lot }) => lot.id === id).map(({ lot }) => lot)) }
  })
}

const materialsOf = (revision: Revision, materials: ReadonlyMap<string, Material>) =>
  [...new Set(linesOf(revision).map(({ materialId }) => materialId))].flatMap((id) => materials.get(id) ?? [])

const linesOf = (revision: Revision) => revision.phases.flatMap(({ lines }) => lines)

/** What was kept counts only while its finding stands. */
const stillKept = ({ kept }: Choice, findings: readonly Finding[]): Choice['kept'] =>
  kept.filter((each) => findings.some(({ code, about }) => code === each.code && about === each.about))

function ambientOf({ ambient }: Choice): { ambientC?: number } {
  const ambientC = Number(ambient.trim().replace(',', '.'))
  return ambient.trim() === '' || !Number.isFinite(ambientC) ? {} : { ambientC }
}
