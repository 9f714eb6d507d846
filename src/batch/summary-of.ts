import { massIn } from '../trade/ledger'
import { vesselsOf } from '../trade/ledger-sums'
import { checksDueOf, hasBeenMeasured } from './checks-due'
import { nextActionOf } from './next-action'
import { isDone, nextStep, strataOf, vesselTargetUg } from './progress'
import { lossCheckOf } from './reconciliation'
import { isOutside, latestRested, resultRecord } from './record-results'
import { pullsLeft } from './stability'
import type { BatchState } from './state'
import { type BatchSummary, isInHand } from './summary'
import { usedLots } from './used-lots'
import { askOf } from './wording'

/** What lists show of a batch; made again whenever an entry is written, and from the log alone. */
export function summaryOf(state: BatchState): BatchSummary {
  const { header } = state
  const next = state.stage === 'closed' || state.stage === 'abandoned' ? null : nextStep(state)
  const deviations = [...state.deviations.values()]
  const fullest = [...vesselsOf(state.ledger)].sort((a, b) => massIn(state.ledger, b) - massIn(state.ledger, a))[0]
  const closedAtMs = state.decision?.atMs
  const pulls = pullsLeft(state)
  return {
    id: header.id,
    code: header.code,
    shortName: header.shortName,
    formulaId: header.formulaId,
    formulaName: header.formulaName,
    revision: header.revision.number,
    totalUg: state.totalUg,
    stage: state.stage,
    openedAtMs: state.openedAtMs,
    touchedAtMs: state.lastAtMs,
    person: state.person,
    ...(closedAtMs === undefined ? {} : { closedAtMs }),
    ...(state.decision === undefined ? {} : { decision: state.decision.decision }),
    ...(next === null
      ? {}
      : {
          next: {
            step: next.id,
            phase: next.step.phase,
            text: nextActionOf(state, next),
            place: next.step.instruction ?? askOf(next.step, header),
          },
        }),
    done: state.plan.steps.filter((planned) => isDone(state, planned.id)).length,
    steps: state.plan.steps.length,
    cup:
      fullest === undefined
        ? { strata: [], targetUg: state.totalUg }
        : { strata: strataOf(state, fullest), targetUg: vesselTargetUg(state, fullest) },
    timers: [...state.timers.values()]
      .filter((timer) => timer.acknowledged === undefined)
      .map(({ id, label, deadlineAtMs }) => ({ id, label, deadlineAtMs })),
    checksDue: checksDueOf(state).filter((due) => !hasBeenMeasured(state, due.check)),
    ...(pulls.length === 0 ? {} : { pulls }),
    balanceChecks: state.instruments.flatMap(({ atMs, check, good }) =>
      check.kind === 'balance' && good ? [{ balance: check.id, atMs }] : [],
    ),
    openDeviations: deviations.filter((deviation) => !deviation.settled).length,
    deviations: deviations.length,
    doubts: state.doubts.length,
    ...unexplainedIn(state),
    ...outOfLimitsIn(state),
    ...(state.parts.length === 0 ? {} : { reworks: state.parts.length }),
    usedByLot: usedLots(state),
  }
}

function unexplainedIn(state: BatchState): Pick<BatchSummary, 'unexplainedUg'> {
  const { sums, isFlagged } = lossCheckOf(state)
  return isFlagged && sums.unexplainedUg !== null ? { unexplainedUg: sums.unexplainedUg } : {}
}

function outOfLimitsIn(state: BatchState): Pick<BatchSummary, 'outOfLimits'> {
  const outOfLimits = latestRested(resultRecord(state, (id) => id)).filter(isOutside).length
  return outOfLimits === 0 ? {} : { outOfLimits }
}

/** In hand or parked: on the bench. Ended with checks or pulls to come: to be looked at again. Else on the shelf. */
export function shelfOf(summary: BatchSummary): 'in-hand' | 'follow-up' | 'finished' {
  if (isInHand(summary)) return 'in-hand'
  return summary.checksDue.length > 0 || summary.pulls !== undefined ? 'follow-up' : 'finished'
}
