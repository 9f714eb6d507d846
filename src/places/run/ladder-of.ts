import type { Format } from '../../app/format'
import type { PlannedStep } from '../../batch/plan'
import { isDone, type StepStatus, statusOf, targetOf, totalsOfPhase } from '../../batch/progress'
import type { BatchState } from '../../batch/state'
import { titleOf, underOf } from '../../batch/wording'
import type { EntryState } from '../../parts/entry-mark'
import type { RungState } from '../../parts/rung'
import { latestEntry } from './entries'
import type { RunModel } from './run-model'

export interface LadderPhase {
  readonly letter: string
  readonly name: string
  /** What a folded head says: "5 lines · 90.00 g", "done 10:48", "hydrate, 06:12 left". */
  readonly value: string
  readonly state: 'now' | 'to-do' | 'done' | 'waiting'
  /** The step in hand is one of its steps. */
  readonly inHand: boolean
  readonly rungs: readonly LadderRung[]
}

export interface LadderRung {
  readonly id: string
  readonly state: RungState
  readonly title: string
  readonly value: string
  readonly looking: boolean
  readonly entry: { readonly id: string; readonly state: EntryState } | undefined
}

/** The ladder as it stands: every phase in order, then what follows the phases. */
export function ladderOf(run: RunModel, format: Format): readonly LadderPhase[] {
  const { state } = run.standing.value
  const inHand = run.stepId.value
  const heads = [...state.plan.phases]
  // Reworks come after what finished the batch.
  heads.splice(state.header.revision.phases.length, 0, { letter: 'finish', name: 'Finish' })
  return heads.flatMap(({ letter, name }) => {
    const steps = state.plan.steps.filter(({ step }) => step.phase === letter)
    if (steps.length === 0) return []
    const holds = steps.some(({ id }) => id === inHand)
    return [
      {
        letter,
        name,
        inHand: holds,
        ...headOf(run, state, letter, steps, holds, format),
        // Worked out where a phase is open: a folded one shows its head alone.
        get rungs() {
          return steps.map((planned) => rungOf(run, state, planned, format))
        },
      },
    ]
  })
}

/** The whole number of this step among its phase's, for where there is no room for the ladder. */
export function placeInPhase(state: BatchState, planned: PlannedStep): { readonly at: number; readonly of: number } {
  const steps = state.plan.steps.filter(({ step }) => step.phase === planned.step.phase)
  return { at: steps.findIndex(({ id }) => id === planned.id) + 1, of: steps.length }
}

function headOf(
  run: RunModel,
  state: BatchState,
  letter: string,
  steps: readonly PlannedStep[],
  holds: boolean,
  format: Format,
): Pick<LadderPhase, 'state' | 'value'> {
  if (steps.every(({ id }) => isDone(state, id))) {
    const lastMs = Math.max(...steps.map(({ id }) => doneAtMs(state, id)))
    return { state: holds ? 'now' : 'done', value: lastMs > 0 ? `done ${format.time(lastMs)}` : 'done' }
  }
  const clock = run.timers.value.find((timer) => steps.some(({ id }) => id === timer.step))
  if (clock && !holds) {
    const left = `${format.duration(clock.leftMs)} ${clock.ringing ? 'late' : 'left'}`
    return { state: 'waiting', value: `${clock.label.toLowerCase()}, ${left}` }
  }
  return { state: holds ? 'now' : 'to-do', value: planOf(state, letter, steps, format) }
}

function planOf(state: BatchState, letter: string, steps: readonly PlannedStep[], format: Format): string {
  const { lines, targetUg } = totalsOfPhase(state, letter)
  if (lines > 0) return `${lines} ${lines === 1 ? 'line' : 'lines'} · ${format.massWithUnit(targetUg)}`
  return steps
    .slice(0, 3)
    .map(({ step }) => titleOf(step, state.header))
    .join(' · ')
}

const doneAtMs = (state: BatchState, stepId: string): number => {
  const step = state.steps.get(stepId)
  const weighed = step?.weighings.at(-1)
  return step?.finished?.atMs ?? (weighed ? Date.parse(weighed.at) : 0)
}

function rungOf(run: RunModel, state: BatchState, planned: PlannedStep, format: Format): LadderRung {
  const status = statusOf(state, planned.id)
  const inHand = planned.id === run.stepId.value
  const entry = latestEntry(state, run.handle.entryStates.value, planned.id)
  const value = rungValue(run, state, planned, status, inHand, format)
  return {
    id: planned.id,
    state: markOf(status, inHand),
    title: titleOf(planned.step, state.header),
    value,
    looking: inHand && (status === 'done' || status === 'skipped'),
    entry,
  }
}

function markOf(status: StepStatus, inHand: boolean): RungState {
  if (status === 'over') return 'over'
  if (status === 'done') return 'done'
  if (status === 'skipped') return 'closed'
  if (inHand) return 'now'
  if (status === 'running') return 'waiting'
  return status === 'part' ? 'part' : 'to-do'
}

function rungValue(
  run: RunModel,
  state: BatchState,
  planned: PlannedStep,
  status: StepStatus,
  inHand: boolean,
  format: Format,
): string {
  const clock = run.timers.value.find((timer) => timer.step === planned.id)
  if (clock) return `${format.duration(clock.leftMs)} ${clock.ringing ? 'late' : 'left'}`
  const targetUg = planned.step.kind === 'weigh' ? targetOf(state, planned.id) : undefined
  if (targetUg === undefined || status === 'skipped') return underOf(state, planned)
  const stepUg = planned.line?.balance.stepUg
  const target = format.mass(targetUg, stepUg)
  const step = state.steps.get(planned.id)
  if (step && step.weighings.length > 0) {
    const net = format.mass(step.netUg, stepUg)
    return status === 'over' ? `over · ${net} of ${target}` : `${net} g of ${target}`
  }
  const was = step?.targets.at(-2)
  const old = was === undefined ? '' : `, was ${format.mass(was, stepUg)}`
  return inHand ? `now · ${target} g${old}` : `${target} g${old}`
}
