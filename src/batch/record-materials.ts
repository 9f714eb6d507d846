import { compositionAsMade } from '../trade/composition'
import { addedOf } from '../trade/ledger-sums'
import type { Micrograms } from '../trade/mass'
import { type Judgement, judge } from '../trade/tolerance'
import type { Lot } from './catalogue'
import type { Source } from './event'
import type { Check } from './formula'
import type { PlannedLine, PlannedStep } from './plan'
import { bandOfStep } from './progress'
import { entriesOf, type Stamp, type Struck } from './record-entries'
import type { BatchState } from './state'

/** A line of the formula in one weigh or adjust step. Masses as they stood on the balance. */
export interface MaterialRow {
  readonly step: string
  readonly line: string
  readonly phase: string
  readonly name: string
  readonly inci: string
  /** Codes of the lots that were used, else of those that were planned. */
  readonly lots: readonly string[]
  readonly targetUg?: Micrograms
  /** Targets that a remedy replaced, oldest first. */
  readonly targetWas: readonly Micrograms[]
  /** Of an adjuster: the check it was added for. */
  readonly toCheck?: Check
  readonly actualUg: Micrograms
  readonly verdict: Judgement | 'part' | 'none'
  /** Readability of the line's balance. */
  readonly stepUg: Micrograms
  /** Of the finished product, on the line's first row only. */
  readonly asMade?: number
  readonly deviation: boolean
  readonly weighings: readonly WeighingRow[]
  /** Rinses and make-up that this line gave beside its weighings; on its first row only. */
  readonly more: readonly (Stamp & { readonly what: 'rinse' | 'make-up'; readonly massUg: Micrograms })[]
}

export interface WeighingRow extends Stamp {
  readonly netUg: Micrograms
  readonly lot?: string
  /** As it was written down, where it was corrected since. */
  readonly lotWas?: string
  readonly balance: string
  readonly vessel: string
  readonly checkedBy?: string
  readonly source: Source
  readonly struck?: Struck
  /** False where its vessel was thrown away and the line weighed again. */
  readonly counts: boolean
}

export interface UnplannedRow extends Stamp {
  readonly component: string
  readonly name: string
  readonly vessel: string
  readonly netUg: Micrograms
  readonly lot?: string
  readonly reason: string
  readonly asMade?: number
  readonly struck?: Struck
}

type Initials = (id: string) => string

/** Of the formula; or of one rework, what it added. */
export function materialRows(state: BatchState, initialsOf: Initials, part?: number): readonly MaterialRow[] {
  const asMade = compositionAsMade(state.ledger)
  const weighings = weighingsByStep(state, initialsOf)
  const more = additionsByLine(state, initialsOf)
  const steps = state.plan.steps.filter(
    (planned) => planned.part === part && planned.line && ['weigh', 'adjust'].includes(planned.step.kind),
  )
  // A rework has an order of its own.
  const order = new Map(part === undefined ? [...state.plan.lines.keys()].map((line, index) => [line, index]) : [])
  const inOrder = [...steps].sort((a, b) => place(order, a) - place(order, b) || a.index - b.index)
  const seen = new Set<string>()
  return inOrder.flatMap((planned) => {
    const { line } = planned
    if (!line) return []
    // What a line of the formula came to in all stands with the formula.
    const first = !seen.has(line.line.id) && (part === undefined || line.phase === '+')
    seen.add(line.line.id)
    const fraction = asMade.get(line.line.id)
    return [
      {
        ...rowOf(state, planned, line, weighings.get(planned.id) ?? []),
        ...(first && fraction !== undefined ? { asMade: fraction } : {}),
        more: first ? (more.get(line.line.id) ?? []) : [],
      },
    ]
  })
}

export function unplannedRows(
  state: BatchState,
  initialsOf: Initials,
  lots?: ReadonlyMap<string, Lot>,
): readonly UnplannedRow[] {
  const asMade = compositionAsMade(state.ledger)
  const codes = lotCodesOf(state, lots)
  return entriesOf(state, 'unplanned-added', initialsOf).map(({ event, ...stamp }) => {
    const { component, name, vessel, netUg, lot, reason } = event.body
    const fraction = addedOf(state.ledger, component) > 0 ? asMade.get(component) : undefined
    return {
      ...stamp,
      component,
      name,
      vessel: vesselName(state, vessel),
      netUg,
      reason,
      ...(lot === undefined ? {} : { lot: codes.get(lot) ?? lot }),
      ...(fraction === undefined ? {} : { asMade: fraction }),
    }
  })
}

export const vesselName = (state: BatchState, id: string): string => state.plan.vessels.get(id)?.name ?? id

/** The code on a lot's label by its id: of the batch's own lots, those opened later too, and of the catalogue's. */
export function lotCodesOf(state: BatchState, lots?: ReadonlyMap<string, Lot>): ReadonlyMap<string, string> {
  const own = [...state.plan.lines.values()].flatMap((line) => line.lots)
  return new Map([...(lots?.values() ?? []), ...own].map(({ id, code }) => [id, code]))
}

/** The code on the lot's label; its id where no line has it. */
function lotCode(state: BatchState, id: string): string {
  for (const { lots } of state.plan.lines.values()) {
    const lot = lots.find((each) => each.id === id)
    if (lot) return lot.code
  }
  return id
}

type Base = Omit<MaterialRow, 'asMade' | 'more'>

function rowOf(
  state: BatchState,
  planned: PlannedStep,
  { line, phase, material, balance, lots }: PlannedLine,
  weighings: readonly WeighingRow[],
): Base {
  const step = state.steps.get(planned.id)
  const targetUg = step?.targets.at(-1)
  const used = [...new Set(weighings.flatMap((each) => (each.counts && each.lot !== undefined ? [each.lot] : [])))]
  const check = checkOf(state, planned)
  return {
    step: planned.id,
    line: line.id,
    phase,
    name: material.name,
    inci: material.inci.map((part) => part.name).join(', '),
    lots: used.length > 0 ? used : lots.slice(0, 1).map((lot) => lot.code),
    targetWas: step?.targets.slice(0, -1) ?? [],
    actualUg: step?.netUg ?? 0,
    verdict: verdictOf(state, planned, balance.stepUg),
    stepUg: balance.stepUg,
    deviation: [...state.deviations.values()].some(
      (each) => each.step === planned.id && each.settled?.how !== 'struck out',
    ),
    weighings,
    ...(targetUg === undefined ? {} : { targetUg }),
    ...(check === undefined ? {} : { toCheck: check }),
  }
}

function verdictOf(state: BatchState, planned: PlannedStep, stepUg: Micrograms): MaterialRow['verdict'] {
  const step = state.steps.get(planned.id)
  if (!step || planned.step.kind !== 'weigh' || step.weighings.length === 0) return 'none'
  const judgement = judge(step.countedUg, bandOfStep(state, planned), stepUg)
  return judgement === 'under' && !step.finished ? 'part' : judgement
}

function checkOf(state: BatchState, { step }: PlannedStep): Check | undefined {
  if (step.kind !== 'adjust') return undefined
  return state.header.revision.specification.find((check) => check.id === step.check)
}

function weighingsByStep(state: BatchState, initialsOf: Initials): ReadonlyMap<string, readonly WeighingRow[]> {
  const rows = new Map<string, WeighingRow[]>()
  const all = [...entriesOf(state, 'weighed', initialsOf), ...entriesOf(state, 'adjusted', initialsOf)]
  for (const { event, ...stamp } of all) {
    const { step: id, line, vessel, netUg, lot: written } = event.body
    const step = state.steps.get(id)
    const weighing = step?.weighings.find((each) => each.id === event.id)
    const counted = weighing !== undefined || step?.portions.some((each) => each.id === event.id)
    const lot = weighing?.body.lot ?? written
    const checkedBy = event.kind === 'weighed' ? event.body.checkedBy : undefined
    const balance = state.header.balances.find((each) => each.id === event.body.balance)
    const row: WeighingRow = {
      ...stamp,
      netUg,
      balance: balance?.name ?? state.plan.lines.get(line)?.balance.name ?? '',
      vessel: vesselName(state, vessel),
      source: event.source,
      counts: counted === true,
      ...(lot === undefined ? {} : { lot: lotCode(state, lot) }),
      ...(written === undefined || written === lot ? {} : { lotWas: lotCode(state, written) }),
      ...(checkedBy === undefined ? {} : { checkedBy: initialsOf(checkedBy) }),
    }
    rows.set(id, [...(rows.get(id) ?? []), row])
  }
  return rows
}

function additionsByLine(state: BatchState, initialsOf: Initials): ReadonlyMap<string, MaterialRow['more']> {
  const rows = new Map<string, MaterialRow['more'][number][]>()
  const put = (line: string | undefined, row: MaterialRow['more'][number]): void => {
    if (line !== undefined && row.massUg > 0) rows.set(line, [...(rows.get(line) ?? []), row])
  }
  for (const kind of ['charged', 'transferred'] as const)
    for (const { event, struck, ...stamp } of entriesOf(state, kind, initialsOf))
      if (!struck) put(event.body.rinseLine, { ...stamp, what: 'rinse', massUg: event.body.rinseUg })
  for (const { event, struck, ...stamp } of entriesOf(state, 'made-up', initialsOf))
    if (!struck) put(event.body.line, { ...stamp, what: 'make-up', massUg: event.body.netUg })
  return rows
}

const place = (order: ReadonlyMap<string, number>, { line }: PlannedStep): number =>
  order.get(line?.line.id ?? '') ?? order.size
