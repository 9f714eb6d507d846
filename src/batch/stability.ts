import { msOf } from './instant'
import { type BatchEvent, isKnown } from './kinds'
import { daysLate, type PlannedPull, pullsOf } from './pulls'
import { type StandardReading, standardOf } from './read-unlike'
import { jarName, jarOf, type Measure, type StabilityPlan } from './stability-plan'
import type { BatchState } from './state'

/** The kept jars of a batch: what was planned last, and what was read of each. */
export interface Stability {
  readonly plan: StabilityPlan
  readonly pulls: readonly PullState[]
  /** Cycles gone through so far, by condition. */
  readonly cycles: ReadonlyMap<string, number>
  /** How each measure is to be read so that its jars can be compared, by its id. */
  readonly standards: ReadonlyMap<string, StandardReading>
}

export interface PullState extends PlannedPull {
  readonly readings: readonly JarReading[]
  /** What is not read yet; a pull is done where nothing is left. */
  readonly left: readonly Measure[]
  /** Days past its window at which it was first read; 0 in time or not read. */
  readonly lateDays: number
}

/** One result of one jar. `atMs` is when it was read. */
export interface JarReading {
  readonly entry: string
  readonly atMs: number
  readonly by: string
  readonly measure: Measure
  readonly body: Extract<BatchEvent, { kind: 'measured' }>['body']
}

/** The plan that counts is the last one that was not struck out; null where there is none. */
export function stabilityOf(state: BatchState): Stability | null {
  const counting = state.entries.filter(({ struck }) => !struck).map(({ event }) => event)
  const known = counting.filter(isKnown)
  const planned = known.findLast((event) => event.kind === 'stability-planned')
  if (planned === undefined) return null
  const plan = planned.body
  const read = known.filter((event) => event.kind === 'measured')
  const cycles = new Map<string, number>()
  for (const event of known) {
    if (event.kind !== 'cycle-counted') continue
    cycles.set(event.body.condition, (cycles.get(event.body.condition) ?? 0) + 1)
  }
  const standards = new Map(plan.measures.map(({ id, method }) => [id, standardOf(method, restedOf(state, id))]))
  return { plan, cycles, standards, pulls: pullsOf(plan).map((pull) => pullState(plan, pull, read)) }
}

/** What the batch itself showed of a check once it had rested: every jar starts from there. */
export const restedOf = ({ measurements }: BatchState, check: string): Measured['body'] | undefined =>
  measurements.findLast(({ body }) => body.check === check && body.conditions === undefined)?.body

type Measured = Extract<BatchEvent, { kind: 'measured' }>

function pullState(plan: StabilityPlan, pull: PlannedPull, read: readonly Measured[]): PullState {
  const readings = read.flatMap((event): JarReading[] => {
    const jar = event.body.conditions === undefined ? undefined : jarOf(event.body.conditions)
    if (jar?.at !== pull.at || jar.label !== pull.condition.label) return []
    const measure = measureOf(plan, event.body)
    if (measure === undefined) return []
    const { id: entry, by, body } = event
    return [{ entry, by, body, measure, atMs: msOf(event.occurredAt ?? event.at) }]
  })
  const first = Math.min(...readings.map(({ atMs }) => atMs))
  return {
    ...pull,
    readings,
    left: plan.measures.filter((measure) => !readings.some((reading) => reading.measure === measure)),
    lateDays: readings.length === 0 ? 0 : daysLate(pull, first),
  }
}

/** A check of the specification is known by its id, a free one by its label. */
const measureOf = ({ measures }: StabilityPlan, body: Measured['body']): Measure | undefined =>
  measures.find(({ id, label }) => (body.check === undefined ? label === body.label : id === body.check))

/** A pull with something left to read, as lists show it without reading the log. */
export interface PullDue extends Pick<PlannedPull, 'id' | 'dueAtMs' | 'fromMs' | 'untilMs' | 'missedAtMs'> {
  readonly jar: string
  /** Labels of the measures. */
  readonly left: readonly string[]
}

/** What is still to be pulled of a batch; nothing of one that was given up or rejected. */
export function pullsLeft(state: BatchState): readonly PullDue[] {
  if (state.stage === 'abandoned' || state.decision?.decision === 'reject') return []
  const pulls = stabilityOf(state)?.pulls ?? []
  return pulls
    .filter(({ left }) => left.length > 0)
    .map(({ id, dueAtMs, fromMs, untilMs, missedAtMs, condition, at, left }) => ({
      id,
      jar: jarName(condition, at),
      dueAtMs,
      fromMs,
      untilMs,
      missedAtMs,
      left: left.map(({ label }) => label),
    }))
}
