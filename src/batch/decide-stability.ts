import { accept, refuse } from '../trade/result'
import { decideMeasure } from './decide-measure'
import { unitOf } from './how-read'
import { msOf } from './instant'
import type { Context, Intention, JarResult } from './intention'
import type { Bodies } from './kinds'
import { dayMs } from './pulls'
import type { BatchRefusal, Decision } from './refusal'
import { type JarReading, type PullState, type Stability, stabilityOf } from './stability'
import { jarName, type Measure, readsNumber } from './stability-plan'
import { planProblem } from './stability-plan-problem'
import type { BatchState } from './state'

type StabilityIntention = Extract<Intention, { do: 'plan-stability' | 'count-cycle' | 'pull' }>
type Asks<D extends StabilityIntention['do']> = Extract<StabilityIntention, { do: D }>

/** Rules of kept jars: how they are planned, frozen and thawed, and read. */
export function decideStability(state: BatchState, intention: StabilityIntention, context: Context): Decision {
  if (intention.do === 'plan-stability') {
    const problem = planProblem(intention.plan, state.openedAtMs)
    return problem ? refuse(problem) : accept([{ kind: 'stability-planned', body: intention.plan }])
  }
  const stability = stabilityOf(state)
  if (stability === null) return refuse({ code: 'NO_SUCH_JAR' })
  return intention.do === 'pull'
    ? pull(state, stability, intention, context)
    : countCycle(stability, intention.condition)
}

function countCycle({ plan, cycles }: Stability, id: string): Decision {
  const planned = plan.conditions.find((condition) => condition.id === id)?.cycles
  if (planned === undefined) return refuse({ code: 'NO_SUCH_JAR' })
  const last = Math.max(...planned.pulls)
  if ((cycles.get(id) ?? 0) >= last) return refuse({ code: 'CYCLES_DONE', cycles: last })
  return accept([{ kind: 'cycle-counted', body: { condition: id } }])
}

function pull(state: BatchState, stability: Stability, asked: Asks<'pull'>, context: Context): Decision {
  const jar = stability.pulls.find(({ condition, at }) => condition.id === asked.condition && at === asked.at)
  if (jar === undefined) return refuse({ code: 'NO_SUCH_JAR' })
  if (asked.readings.length === 0) return refuse({ code: 'NOTHING_READ' })
  const atMs = asked.late === undefined ? context.nowMs : msOf(asked.late.occurredAt)
  if (atMs < state.openedAtMs) return refuse({ code: 'BEFORE_THE_BATCH' })
  const untimely = tooFewCycles(stability, jar)
  if (untimely) return refuse(untimely)
  const bodies: Bodies['measured'][] = []
  for (const reading of asked.readings) {
    const body = bodyOf(stability, jar, reading)
    if ('code' in body) return refuse(body)
    bodies.push(body)
  }
  const question = questionOf(jar, asked, atMs)
  if (question) return refuse(question)
  return decideMeasure(state, { results: bodies, ...(asked.late ? { late: asked.late } : {}) }, context)
}

/** A jar that is to be read after its cycles has gone through them. */
function tooFewCycles({ cycles }: Stability, { condition, at }: PullState): BatchRefusal | null {
  const counted = cycles.get(condition.id) ?? 0
  return condition.cycles && counted < at ? { code: 'CYCLES_BEHIND', counted, wanted: at } : null
}

/** The result with its unit, as the plan has it: a number for what is told in words would have none. */
function bodyOf({ plan }: Stability, jar: PullState, reading: JarResult): Bodies['measured'] | BatchRefusal {
  const measure = plan.measures.find(({ id }) => id === reading.measure)
  if (measure === undefined) return { code: 'NO_SUCH_JAR' }
  const { label, property } = measure
  const { value, text, good } = reading
  if (value === undefined && (text ?? '').trim() === '' && good === undefined) return { code: 'NOTHING_READ' }
  if (value !== undefined && !readsNumber(measure)) return { code: 'UNIT_MISSING', label }
  const said = value === undefined ? text?.trim() : measure.method
  return {
    check: measure.id,
    property,
    label,
    conditions: jarName(jar.condition, jar.at),
    ...(said ? { text: said } : {}),
    ...(good === undefined ? {} : { good }),
    ...(value === undefined ? {} : figureOf(measure, reading)),
    ...(measure.scale === undefined ? {} : { how: { scale: measure.scale } }),
  }
}

/** The figure with its unit, and how it was read. */
function figureOf(measure: Measure, { value = 0, readings, sampleC, how }: JarResult): Partial<Bodies['measured']> {
  const { basis } = measure
  const unit = unitOf(measure)
  return {
    value,
    ...(unit === undefined ? {} : { unit }),
    ...(basis === undefined ? {} : { basis }),
    ...(readings === undefined ? {} : { readings }),
    ...(sampleC === undefined ? {} : { sampleC }),
    ...(how === undefined ? {} : { how }),
  }
}

/** What may be meant but seldom is: a jar before its time, and one that was read already. */
function questionOf(jar: PullState, { readings, meant = [] }: Asks<'pull'>, atMs: number): BatchRefusal | null {
  const name = jarName(jar.condition, jar.at)
  if (atMs < jar.fromMs && !meant.includes('PULL_EARLY'))
    return { code: 'PULL_EARLY', jar: name, days: Math.ceil((jar.fromMs - atMs) / dayMs) }
  if (meant.includes('PULLED_ALREADY')) return null
  const again = jar.readings.find(({ measure }) => readings.some((reading) => reading.measure === measure.id))
  return again ? { code: 'PULLED_ALREADY', jar: name, label: again.measure.label, was: shown(again) } : null
}

const shown = ({ body: { value, unit, text, good } }: JarReading): string =>
  value === undefined
    ? (text ?? (good ? 'as it should be' : 'not as it should be'))
    : `${value}${unit === undefined ? '' : ` ${unit}`}`
