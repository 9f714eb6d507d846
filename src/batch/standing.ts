import type { Micrograms } from '../trade/mass'
import { inBatchUg } from './in-batch'
import { effectiveTargetUg, lineTargetUg, weighStepsOf } from './line-targets'
import { isPlannedFor, looseUg, lossesOf } from './lost'
import { type ReworkStart, startOf } from './rework-start'
import { qsLineOf } from './room'
import type { BatchState, Part } from './state'

/** What ways on are reckoned with: of the finished batch, what each line is to come to and what is in. */
export interface Standing {
  readonly totalUg: Micrograms
  /** Of what went in and goes in by the plan, what does not end in it. */
  readonly apartUg: Micrograms
  readonly targetUg: (line: string) => Micrograms
  readonly massUg: (component: string) => Micrograms
}

/** Of the whole batch; once it is reworked, of what the rework began with. What is lost, or was filled and kept, is out. */
export function standingOf(state: BatchState): Standing {
  const part = state.parts.at(-1)
  const gone = lossesOf(state, 'all')
  const plannedFor = lossesOf(state, 'planned-for')
  const start = part && startOf(state, part)
  const outUg = part && start ? start.apartUg + skippedUg(state, part) : 0
  const targetUg = start === undefined ? (line: string) => lineTargetUg(state, line) : targetsIn(state, start, outUg)
  const awayUg = (component: string): Micrograms => start?.awayUg.get(component) ?? 0
  return {
    totalUg: state.totalUg - outUg - sum(plannedFor.values()),
    apartUg: outUg + sum(gone.values()),
    targetUg: (line) => targetUg(line) - (plannedFor.get(line) ?? 0),
    massUg: (id) => Math.max(0, inBatchUg(state, id) - awayUg(id) - (gone.get(id) ?? 0) - looseUg(state, id)),
  }
}

/** What is in when a rework begins is its plan; what has been asked for since comes on top, and q.s. is what remains. */
function targetsIn(state: BatchState, start: ReworkStart, outUg: Micrograms): (line: string) => Micrograms {
  const asked = (line: string): Micrograms =>
    (start.heldUg.get(line) ?? 0) + sum(weighStepsOf(state, line).map(({ id }) => askedSince(state, start, id)))
  const qs = qsLineOf(state)
  return (line) => {
    if (line !== qs) return asked(line)
    const others = [...state.plan.lines.keys()].filter((id) => id !== qs).map(asked)
    const strangers = [...state.unplanned.keys()]
      .filter((id) => isPlannedFor(state, id))
      .map((id) => inBatchUg(state, id) - (start.awayUg.get(id) ?? 0))
    return state.totalUg - outUg - sum(others) - sum(strangers)
  }
}

function askedSince(state: BatchState, { before }: ReworkStart, id: string): Micrograms {
  const { asked, countedUg } = before.get(id) ?? { asked: 0, countedUg: 0 }
  const step = state.steps.get(id)
  if (step === undefined || step.targets.length <= asked) return 0
  return (step.finished?.how === 'skipped' ? step.countedUg : effectiveTargetUg(state, id)) - countedUg
}

/** What a rework asked for and left out. */
const skippedUg = (state: BatchState, { steps }: Part): Micrograms =>
  sum(
    steps.map((id) => {
      const step = state.steps.get(id)
      const targetUg = step?.targets.at(-1) ?? 0
      return step?.finished?.how === 'skipped' ? Math.max(0, targetUg - step.countedUg) : 0
    }),
  )

const sum = (values: Iterable<number>): number => [...values].reduce((total, value) => total + value, 0)
