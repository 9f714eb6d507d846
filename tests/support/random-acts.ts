import fc from 'fast-check'
import { remediesFor } from '../../src/batch/deviation'
import type { Intention } from '../../src/batch/intention'
import type { RemedyKind, Surroundings } from '../../src/batch/kinds'
import { nextStep, openSteps, statusOf } from '../../src/batch/progress'
import type { BatchState } from '../../src/batch/state'
import { weighingOf } from '../../src/batch/weighing-of'
import { massIn } from '../../src/trade/ledger'
import { vesselsOf } from '../../src/trade/ledger-sums'
import { Refused, type TestBench } from './batch'
import { doStep } from './run'

/** Something a person may want, sensible or not; `pick` chooses among what the batch has at that moment. */
export interface Act {
  readonly want: (typeof wants)[number]
  readonly pick: number
  readonly massUg: number
}

const wants = [
  ...(Array(12).fill('usual') as 'usual'[]),
  'weigh',
  'weigh-over',
  'weigh-over',
  'weigh-part',
  'leave-short',
  'take-out',
  'settle',
  'settle',
  'discard-cup',
  'add-unplanned',
  'spill',
  'charge',
  'combine',
  'start-step',
  'finish-step',
  'skip-step',
  'pass-gate',
  'pass-gate',
  'read-temperature',
  'change-bath',
  'tell-surroundings',
  'start-timer',
  'acknowledge-timer',
  'measure',
  'adjust',
  'make-up',
  'record-loss',
  'sample',
  'fill',
  'choose-lots',
  'tare',
  'park',
  'resume',
  'resume',
  'hand-over',
  'wait',
  'strike',
  'strike',
] as const

/** Masses that bite: none, one microgram, fractions of one, huge, and everyday ones. */
const massUg = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 1, max: 60_000_000 }) },
  fc.constantFrom(0, 1, -5, 0.5, Number.NaN, Number.POSITIVE_INFINITY, 9e9, 2 ** 60),
)

/** With `strikes`, some acts strike out what was done before. */
export const acts = (strikes: boolean, maxLength = 40): fc.Arbitrary<Act[]> =>
  fc.array(
    fc.record({
      want: fc.constantFrom(...wants.filter((want) => strikes || want !== 'strike')),
      pick: fc.nat(10_000),
      massUg,
    }),
    { minLength: Math.ceil(maxLength / 4), maxLength, size: 'max' },
  )

/** Does an act, or finds it refused: nothing else may happen. */
export function perform(bench: TestBench, act: Act): 'done' | 'refused' {
  try {
    if (act.want === 'usual') usual(bench, act.pick)
    else if (act.want === 'wait') bench.wait((act.pick % 30) + 0.5)
    else {
      const intention = intentionOf(act, bench.state)
      if (intention === null) return 'refused'
      bench.intend(intention)
    }
    return 'done'
  } catch (error) {
    if (error instanceof Refused) return 'refused'
    throw error
  }
}

function usual(bench: TestBench, pick: number): void {
  const next = nextStep(bench.state)
  if (next && statusOf(bench.state, next.id) === 'over') bench.settle(usualWay(bench, pick))
  else if (next) doStep(bench, next.id)
}

/** Any way on that is offered. */
function usualWay(bench: TestBench, pick: number): RemedyKind {
  const open = remediesFor(bench.state, bench.deviation().id).filter(({ feasible }) => feasible)
  return pickOf(open, pick)?.remedy ?? 'accept'
}

const everyRemedy: readonly RemedyKind[] = ['accept', 'scale', 'smaller', 'extra', 'qs', 'departure', 'cost', 'discard']

const pickOf = <T>(list: readonly T[], pick: number): T | undefined => list[pick % Math.max(1, list.length)]

function intentionOf({ want, pick, massUg }: Act, state: BatchState): Intention | null {
  const step = stepFor(want, pick, state)
  const vessel =
    pickOf([...(pick % 3 === 0 ? state.plan.vessels.keys() : vesselsOf(state.ledger)), 'bucket'], pick) ?? ''
  const reason = pick % 7 === 0 ? ' ' : 'because'
  switch (want) {
    case 'weigh':
      return weigh(step, massUg)
    case 'weigh-over':
      return weigh(step, Math.round((weighingOf(state, step)?.leftHighUg ?? 0) * (1.0001 + (pick % 5) / 10)))
    case 'weigh-part':
      return weigh(step, Math.round((weighingOf(state, step)?.leftUg ?? 0) / (2 + (pick % 3))))
    case 'leave-short':
    case 'skip-step':
      return { do: want, step, reason }
    case 'take-out':
      return { do: want, step, massUg, reason }
    case 'settle': {
      const open = [...state.deviations.values()].filter((each) => pick % 5 === 0 || !each.settled)
      const deviation = pickOf(open, pick)?.id ?? 'none'
      return {
        do: want,
        deviation,
        remedy: pickOf(everyRemedy, pick) ?? 'qs',
        reason,
      }
    }
    case 'strike':
      return { do: want, entry: pickOf(state.entries, pick)?.event.id ?? '', reason }
    case 'discard-cup':
      return { do: want, vessel, reason }
    case 'add-unplanned':
      return { do: want, name: reason, vessel, netUg: massUg, reason }
    case 'spill':
      return { do: want, vessel, massUg, reason }
    case 'charge':
    case 'combine':
      return { do: want, step, residueUg: massUg % 1_000_000, rinseUg: pick % 3 === 0 ? massUg : 0 }
    case 'start-step':
    case 'finish-step':
      return { do: want, step }
    case 'pass-gate': {
      const gates = [
        'ORDER',
        'CUP_EMPTY',
        'DEVIATION_OPEN',
        'ABOVE_THEORY',
        'ABOVE_MAXIMUM',
        'TIMER_NOT_STARTED',
      ] as const
      return { do: want, step, gate: pickOf(gates, pick) ?? 'ORDER', detail: '', reason }
    }
    default:
      return otherIntention(want, { step, vessel, reason, pick, massUg }, state)
  }
}

/** Mostly a step that the act is made for and that can be worked on; at times any other. */
function stepFor(want: Act['want'], pick: number, state: BatchState): string {
  const kind = want.startsWith('weigh') || want === 'leave-short' || want === 'take-out' ? 'weigh' : want
  const fitting = openSteps(state).filter(({ step }) => step.kind === kind)
  const open = fitting.length > 0 ? fitting : openSteps(state)
  const steps = pick % 5 === 0 || open.length === 0 ? state.plan.steps : open
  return pickOf([...steps.map(({ id }) => id), ...(pick % 11 === 0 ? ['nowhere'] : [])], pick) ?? 'nowhere'
}

const weigh = (step: string, readingUg: number): Intention => ({
  do: 'weigh',
  step,
  reading: { mode: 're-tare', readingUg },
  checkedBy: 'person-jt',
})

/** A gross reading a little below or above what the vessel should weigh. */
const grossNear = (state: BatchState, vessel: string, massUg: number): number =>
  (state.vessels.get(vessel)?.tareUg ?? 0) + massIn(state.ledger, vessel) + (massUg % 20_000_000) - 15_000_000

function aboutOf(vessel: string, pick: number): Surroundings {
  const temperatureC = (pick % 80) - 10
  if (pick % 3 === 0) return { of: 'room', temperatureC }
  return pick % 3 === 1 ? { of: 'bath', vessel, temperatureC } : { of: 'plate', vessel, setC: temperatureC + 20 }
}

/** The vessel read before and after, the wrong way round at times. */
const readAfter = (pick: number, massUg: number): { grossBeforeUg?: number; grossAfterUg?: number } =>
  pick % 3 === 0 ? { grossBeforeUg: 600_000_000 + massUg, grossAfterUg: 600_000_000 + (pick % 7) - 1 } : {}

interface Picked {
  readonly step: string
  readonly vessel: string
  readonly reason: string
  readonly pick: number
  readonly massUg: number
}

function otherIntention(want: Act['want'], picked: Picked, state: BatchState): Intention | null {
  const { step, vessel, reason, pick, massUg } = picked
  switch (want) {
    case 'read-temperature':
      return { do: want, vessel, temperatureC: (pick % 340) - 60 }
    case 'change-bath':
      return { do: want, vessel, what: reason }
    case 'tell-surroundings':
      return { do: want, about: aboutOf(vessel, pick) }
    case 'start-timer':
      return { do: want, step, label: 'timer', minutes: pick % 40 }
    case 'acknowledge-timer':
      return { do: want, timer: pickOf([...state.timers.keys(), 'none'], pick) ?? 'none' }
    case 'measure':
      return { do: want, result: { step, property: 'pH', label: 'pH', value: (pick % 200) / 10 } }
    case 'adjust':
      return { do: want, step, netUg: massUg }
    case 'make-up':
      return { do: want, step, netUg: massUg, ...(pick % 2 === 0 ? { grossUg: grossNear(state, vessel, massUg) } : {}) }
    case 'record-loss':
      return { do: want, vessel, grossUg: grossNear(state, vessel, massUg) }
    case 'sample':
      return { do: want, vessel, massUg, jars: 1, purpose: 'a look', ...(pick % 2 === 0 ? { step } : {}) }
    case 'fill':
      return { do: want, vessel, massUg, units: 1, ...(pick % 2 === 0 ? { step } : {}), ...readAfter(pick, massUg) }
    case 'choose-lots':
      return { do: want, line: pickOf([...state.plan.lines.keys()], pick) ?? '', lots: pick % 2 ? ['lot-sb-056'] : [] }
    case 'tare':
      return { do: want, vessel, tareUg: massUg }
    case 'park':
      return { do: want, reason }
    case 'resume':
      return { do: want }
    case 'hand-over':
      return { do: want, to: pickOf(['person-rk', 'person-mo'], pick) ?? 'person-mo' }
    default:
      return null
  }
}
