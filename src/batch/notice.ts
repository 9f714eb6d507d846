import { sinkContents } from '../trade/ledger-sums'
import type { Micrograms } from '../trade/mass'
import { brokenIfLeft } from './deviation'
import { inBatchUg } from './in-batch'
import type { Context } from './intention'
import type { BatchDraft, Bodies } from './kinds'
import type { PlannedLine, PlannedStep } from './plan'
import { isDone, openDeviation, vesselNow } from './progress'
import { qsLineOf } from './room'
import type { BatchState } from './state'
import { whatIf } from './what-if'

type Noticed = Bodies['deviation-noticed']

/**
 * The drafts with what they make noticeable: a line that was not weighed before its step passed, foreign mass and lost
 * mass that put the product outside a limit if nothing is done about them.
 */
export function withNoticed(state: BatchState, drafts: readonly BatchDraft[], context: Context): readonly BatchDraft[] {
  if (!drafts.some(({ kind }) => telling.has(kind))) return drafts
  let tries = 0
  const trial = { ...context, newId: () => `trial:${tries++}` }
  // Ids are only drawn for what is written.
  return noticedAfter(state, drafts, trial).length === drafts.length ? drafts : noticedAfter(state, drafts, context)
}

function noticedAfter(state: BatchState, drafts: readonly BatchDraft[], context: Context): readonly BatchDraft[] {
  const named = drafts.map((draft) => ({ ...draft, id: draft.id ?? context.newId() }))
  const after = whatIf(state, named)
  const noticed = named.flatMap((draft) => [
    ...forgotten(state, after, draft.id, context),
    ...foreign(state, named, after, draft, context),
    ...loss(state, named, after, draft, context),
  ])
  return [...named, ...noticed]
}

/** Kinds that finish a step, put something foreign in, or lose mass. */
const telling = new Set<BatchDraft['kind']>([
  'step-finished',
  'step-skipped',
  'charged',
  'transferred',
  'unplanned-added',
  'spilled',
])

function forgotten(before: BatchState, after: BatchState, entry: string, context: Context): BatchDraft[] {
  const passed = [...after.plan.lines.values()].filter(({ line }) => {
    const { locksAfter } = line
    return locksAfter !== undefined && !isDone(before, locksAfter) && isDone(after, locksAfter)
  })
  return passed.flatMap((planned) => shortOf(after, planned, entry, context))
}

function shortOf(state: BatchState, planned: PlannedLine, entry: string, context: Context): BatchDraft[] {
  if (planned.line.amount.kind !== 'fraction') return []
  return weighingsOf(state, planned.line.id).flatMap(({ id }): BatchDraft[] => {
    const step = state.steps.get(id)
    const isIn = isDone(state, id) && step?.finished?.how !== 'skipped'
    if (!step || isIn || openDeviation(state, id)) return []
    const byUg = Math.max(0, (step.targets.at(-1) ?? 0) - step.countedUg)
    if (byUg === 0) return []
    return [noticed(context, { entry, step: id, line: planned.line.id, direction: 'under', byUg, cause: 'forgotten' })]
  })
}

function foreign(
  state: BatchState,
  drafts: readonly BatchDraft[],
  after: BatchState,
  draft: BatchDraft & { readonly id: string },
  context: Context,
): BatchDraft[] {
  if (draft.kind !== 'unplanned-added') return []
  const { component, vessel, netUg } = draft.body
  const host = hostOf(after, vessel)
  if (!host) return []
  const deviation = noticed(context, {
    entry: draft.id,
    step: host.id,
    line: component,
    direction: 'over',
    byUg: netUg,
    cause: 'foreign',
  })
  const matters = qsLineOf(state) === undefined || breaksMore(state, [...drafts, deviation], netUg)
  return matters ? [deviation] : []
}

function loss(
  state: BatchState,
  drafts: readonly BatchDraft[],
  after: BatchState,
  draft: BatchDraft & { readonly id: string },
  context: Context,
): BatchDraft[] {
  const massUg = lostUg(draft)
  if (massUg === 0) return []
  const lost = goneBetween(state, after)
  const worst = [...lost].sort((a, b) => shareLost(after, b) - shareLost(after, a))[0]
  const host = worst && weighingsOf(after, worst.line).at(-1)
  if (!worst || !host) return []
  const deviation = noticed(context, {
    entry: draft.id,
    step: host.id,
    line: worst.line,
    direction: 'under',
    byUg: worst.massUg,
    cause: 'loss',
    lost,
  })
  return massUg > allowedLossUg(state) && breaksMore(state, [...drafts, deviation], massUg) ? [deviation] : []
}

/** What clings to beakers on any day is not asked about: 1 % of the batch, or what the formula allows for. */
const allowedLossUg = (state: BatchState): Micrograms =>
  Math.round(state.totalUg * (state.header.revision.lossAllowance ?? 0.01))

const lostUg = (draft: BatchDraft): Micrograms => {
  if (draft.kind === 'spilled') return draft.body.massUg
  return draft.kind === 'charged' || draft.kind === 'transferred' ? draft.body.residueUg : 0
}

const shareLost = (state: BatchState, { line, massUg }: { line: string; massUg: Micrograms }): number =>
  massUg / Math.max(1, inBatchUg(state, line))

/** What went of each line. */
function goneBetween(before: BatchState, after: BatchState): { line: string; massUg: Micrograms }[] {
  return [...after.plan.lines.keys()].flatMap((line) => {
    const massUg = lostSoFar(after, line) - lostSoFar(before, line)
    return massUg > 0 ? [{ line, massUg }] : []
  })
}

const lostSoFar = (state: BatchState, line: string): Micrograms =>
  (sinkContents(state.ledger, 'spilled').get(line) ?? 0) + (sinkContents(state.ledger, 'left-behind').get(line) ?? 0)

/**
 * A limit of the product breaks that was kept before. Lines weighed near the edge of their band leave it at a breath:
 * that counts only where the mass is more than a weighing may be off by.
 */
function breaksMore(state: BatchState, drafts: readonly BatchDraft[], massUg: Micrograms): boolean {
  const before = new Set(brokenIfLeft(state).map(({ line }) => line))
  const fresh = brokenIfLeft(whatIf(state, drafts)).filter(({ line }) => !before.has(line))
  return fresh.some(({ from }) => from !== 'tolerance' || massUg > usualTolerance * state.totalUg)
}

const usualTolerance = 0.01

/** The weighing at which a way on is chosen: the last one into the vessel, else the first that is to go there. */
function hostOf(state: BatchState, vessel: string): PlannedStep | undefined {
  const weighings = state.plan.steps.filter(({ step }) => step.kind === 'weigh')
  const here = weighings.filter(({ step }) => vesselNow(state, step.vessel) === vessel)
  const done = here.findLast(({ id }) => (state.steps.get(id)?.weighings.length ?? 0) > 0)
  return done ?? here[0] ?? weighings.at(-1)
}

const weighingsOf = (state: BatchState, line: string): readonly PlannedStep[] =>
  state.plan.steps.filter(({ step }) => step.kind === 'weigh' && step.line === line)

const noticed = (context: Context, body: Omit<Noticed, 'deviation' | 'inCup'>): BatchDraft => ({
  kind: 'deviation-noticed',
  body: { deviation: context.newId(), inCup: false, ...body },
})
