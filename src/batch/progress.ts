import { addedInAll, contentsOf, inSink, massIn } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { type Band, bandOf, type Judgement, judge } from '../trade/tolerance'
import type { PlannedStep } from './plan'
import type { BatchState, DeviationState, StepState } from './state'

/**
 * waiting: for other steps · open: can be done now · part: weighed short of its band · over: past its band and not
 * settled · running: started, or its timer runs · done · skipped
 */
export type StepStatus = 'waiting' | 'open' | 'part' | 'over' | 'running' | 'done' | 'skipped'

export function statusOf(state: BatchState, stepId: string): StepStatus {
  const planned = state.plan.byId.get(stepId)
  const step = state.steps.get(stepId)
  if (!planned || !step) return 'waiting'
  const soFar = statusSoFar(state, planned, step)
  if (soFar !== null) return soFar
  // The latest first: of what a step waits for it is the likeliest to be undone, and one is enough.
  return planned.waitsFor.findLast((id) => isWaitedFor(state, id)) === undefined ? 'open' : 'waiting'
}

export const isDone = (state: BatchState, stepId: string): boolean => {
  const planned = state.plan.byId.get(stepId)
  const step = state.steps.get(stepId)
  const status = planned && step ? statusSoFar(state, planned, step) : null
  return status === 'done' || status === 'skipped'
}

/** Whether this step must still be done or skipped before those that wait for it. */
export const isWaitedFor = (state: BatchState, id: string): boolean => state.plan.byId.has(id) && !isDone(state, id)

/** Steps that can be worked on now. */
export const openSteps = (state: BatchState): readonly PlannedStep[] => [...openWithStatus(state).keys()]

const openWithStatus = (state: BatchState): ReadonlyMap<PlannedStep, StepStatus> => {
  const all = state.plan.steps.map((planned) => [planned, statusOf(state, planned.id)] as const)
  return new Map(all.filter(([, status]) => ['open', 'part', 'over', 'running'].includes(status)))
}

/** What to do next: a deviation first, then what is begun and needs hands, then the first that can be done. */
export function nextStep(state: BatchState): PlannedStep | null {
  const open = [...openWithStatus(state)]
  const by = (wanted: StepStatus): PlannedStep | undefined => open.find(([, status]) => status === wanted)?.[0]
  const idle = open.find(([{ id }, status]) => status === 'running' && !hasRunningTimer(state, id))?.[0]
  return by('over') ?? by('part') ?? idle ?? by('open') ?? by('running') ?? null
}

export const openDeviation = (state: BatchState, stepId: string): DeviationState | undefined => {
  for (const deviation of state.deviations.values()) {
    if (deviation.step === stepId && !deviation.settled) return deviation
  }
  return undefined
}

/** The target that counts now; undefined for steps without a mass. */
export const targetOf = (state: BatchState, stepId: string): Micrograms | undefined =>
  state.steps.get(stepId)?.targets.at(-1)

/** The readability taken where no balance is named: 0.01 g. */
const usualStepUg = 10_000

/** The band round the whole target of a weigh step, on its balance. */
export function bandOfStep(state: BatchState, planned: PlannedStep): Band {
  const targetUg = targetOf(state, planned.id) ?? 0
  const stepUg = planned.line?.balance.stepUg ?? usualStepUg
  return bandOf(targetUg, planned.line?.line.tolerance, stepUg)
}

/** Past its band, settled or not. */
export const isOver = (state: BatchState, planned: PlannedStep): boolean => judged(state, planned) === 'over'

/** The id of a deviation that nobody noticed when it was weighed; see the fold. */
export const impliedBy = (weighing: string): string => `over:${weighing}`

export interface Totals {
  /** Put in so far, less what evaporated. */
  readonly inUg: Micrograms
  /** Targets of the weigh steps begun so far. */
  readonly dueUg: Micrograms
  readonly totalUg: Micrograms
}

export function totalsOf(state: BatchState): Totals {
  return {
    inUg: addedInAll(state.ledger) - inSink(state.ledger, 'evaporated') - inSink(state.ledger, 'discarded'),
    dueUg: sumOfTargets(state, (planned) => (state.steps.get(planned.id)?.weighings.length ?? 0) > 0),
    totalUg: state.totalUg,
  }
}

export interface PhaseTotals {
  readonly inUg: Micrograms
  readonly targetUg: Micrograms
  readonly lines: number
}

/** Weighed in so far for a phase's lines, against the sum of their targets. */
export function totalsOfPhase(state: BatchState, letter: string): PhaseTotals {
  const weighings = state.plan.steps.filter(
    ({ step, line, part }) => step.kind === 'weigh' && (part === undefined ? line?.phase : step.phase) === letter,
  )
  return {
    inUg: weighings.reduce((sum, planned) => sum + (state.steps.get(planned.id)?.netUg ?? 0), 0),
    targetUg: weighings.reduce((sum, planned) => sum + (targetOf(state, planned.id) ?? 0), 0),
    lines: weighings.length,
  }
}

/** Where the contents of a vessel or cup are now: itself, or what it was tipped into. */
export function vesselNow(state: BatchState, vesselId: string): string {
  const visited = new Set([vesselId])
  let at = vesselId
  for (;;) {
    const next = state.vessels.get(at)?.emptiedInto
    if (next === undefined || visited.has(next)) return at
    visited.add(next)
    at = next
  }
}

export interface Stratum {
  readonly letter: string
  readonly massUg: Micrograms
}

/** What stands in a vessel by phase, the first phase at the bottom. Unplanned additions are `+`, adjusters `finish`. */
export function strataOf(state: BatchState, vesselId: string): readonly Stratum[] {
  const byLetter = new Map<string, Micrograms>()
  for (const [component, massUg] of contentsOf(state.ledger, vesselId)) {
    const letter = state.plan.lines.get(component)?.phase ?? '+'
    byLetter.set(letter, (byLetter.get(letter) ?? 0) + massUg)
  }
  const order = [...state.plan.phases.map((phase) => phase.letter), '+']
  return order.flatMap((letter) => {
    const massUg = byLetter.get(letter)
    return massUg === undefined ? [] : [{ letter, massUg }]
  })
}

/** What a vessel should hold once every weighing that ends in it is done. */
export function vesselTargetUg(state: BatchState, vesselId: string): Micrograms {
  const here = new Set([vesselId])
  for (let grown = true; grown; ) {
    grown = false
    for (const { step } of state.plan.steps) {
      const from = step.kind === 'charge' ? step.cup : step.kind === 'combine' ? step.from : undefined
      if (from !== undefined && here.has(step.vessel) && !here.has(from)) {
        here.add(from)
        grown = true
      }
    }
  }
  return Math.max(
    sumOfTargets(state, ({ step }) => here.has(step.vessel)),
    massIn(state.ledger, vesselId),
  )
}

/** What its own entries say of a step; null where there are none yet. */
function statusSoFar(state: BatchState, planned: PlannedStep, step: StepState): StepStatus | null {
  if (openDeviation(state, planned.id)) return 'over'
  if (step.finished) return step.finished.how === 'skipped' ? 'skipped' : 'done'
  if (planned.step.kind === 'weigh' && step.weighings.length > 0) return weighStatus(state, planned)
  return step.startedAtMs !== undefined || step.portions.length > 0 ? 'running' : null
}

function weighStatus(state: BatchState, planned: PlannedStep): StepStatus {
  const judgement = judged(state, planned)
  if (judgement === 'under') return 'part'
  if (judgement === 'within') return 'done'
  return wasSettled(state, planned.id) ? 'done' : 'over'
}

const judged = (state: BatchState, planned: PlannedStep): Judgement =>
  judge(
    state.steps.get(planned.id)?.countedUg ?? 0,
    bandOfStep(state, planned),
    planned.line?.balance.stepUg ?? usualStepUg,
  )

const wasSettled = (state: BatchState, stepId: string): boolean =>
  [...state.deviations.values()].some((deviation) => deviation.step === stepId && deviation.settled)

const hasRunningTimer = (state: BatchState, stepId: string): boolean => {
  const timer = state.timers.get(state.steps.get(stepId)?.timer ?? '')
  return timer !== undefined && timer.acknowledged === undefined
}

const sumOfTargets = (state: BatchState, which: (planned: PlannedStep) => boolean): Micrograms =>
  state.plan.steps
    .filter((planned) => planned.step.kind === 'weigh' && which(planned))
    .reduce((sum, planned) => sum + (targetOf(state, planned.id) ?? 0), 0)
