import type { Asymptote, TimedReading } from '../trade/newton'
import { bathAsymptote, heldBelowSetC, plateAsymptote, roomAsymptote } from '../trade/thermal'
import type { Event } from './event'
import { msOf } from './instant'
import { type BatchEvent, isKnown, type Surroundings } from './kinds'
import type { PlannedStep } from './plan'
import { vesselNow } from './progress'
import type { BatchState, VesselState } from './state'

export type ThermalReading = VesselState['readings'][number]

/** What is known of a vessel that is heated or cooled to a figure. Moments ms UTC. */
export interface ThermalCourse {
  readonly step: string
  readonly vessel: string
  readonly kind: 'cooling' | 'heating'
  readonly by: 'air' | 'bath' | 'plate'
  /** What the step asks for. */
  readonly askedC: number
  /** What the vessel can be told to reach: less on a plate whose probe holds it below its set point. */
  readonly targetC: number
  /** Since the vessel's contents last changed or its last step was finished, in order of time. */
  readonly readings: readonly ThermalReading[]
  /** From when on conditions are as they are now: the last change of bath, cover or set point. */
  readonly sinceMs: number
  readonly marks: readonly { readonly atMs: number; readonly what: string }[]
  /** What it tends to; null where the room must be told first. */
  readonly asymptote: Asymptote | null
  readonly roomC?: number
  readonly bathC?: number
  readonly setC?: number
}

/** The course of a step that heats or cools; null for any other step. */
export function courseOf(state: BatchState, { id, step }: PlannedStep): ThermalCourse | null {
  if (step.kind !== 'heat' && step.kind !== 'cool') return null
  const vessel = vesselNow(state, step.vessel)
  const entries = countingEntries(state)
  const beganMs = lastChangeMs(state, entries, vessel, id)
  const changes = changesOf(state, vessel).filter(({ atMs }) => atMs >= beganMs)
  const sinceMs = changes.at(-1)?.atMs ?? beganMs
  const roomC = roomOf(state)
  const bathC = step.kind === 'cool' && step.by === 'bath' ? bathOf(entries, vessel, sinceMs) : undefined
  const setC = step.kind === 'heat' ? plateOf(entries, vessel)?.setC : undefined
  return {
    step: id,
    vessel,
    kind: step.kind === 'heat' ? 'heating' : 'cooling',
    by: step.kind === 'heat' ? 'plate' : step.by,
    askedC: step.targetC,
    targetC: setC === undefined ? step.targetC : Math.min(step.targetC, setC - heldBelowSetC),
    readings: (state.vessels.get(vessel)?.readings ?? []).filter(({ atMs }) => atMs >= beganMs),
    sinceMs,
    marks: changes,
    asymptote: asymptoteOf(step, roomC, bathC),
    ...(roomC === undefined ? {} : { roomC }),
    ...(bathC === undefined ? {} : { bathC }),
    ...(setC === undefined ? {} : { setC }),
  }
}

/** The readings that a fit may use, in minutes since the first. */
export function timedReadings({ readings, sinceMs }: ThermalCourse): readonly TimedReading[] {
  const counting = readings.filter(({ atMs }) => atMs >= sinceMs)
  return counting.map(({ atMs, temperatureC }) => ({
    atMin: (atMs - (counting[0]?.atMs ?? atMs)) / 60_000,
    temperatureC,
  }))
}

/** The room's temperature: as told last, else as Start was told. */
export function roomOf(state: BatchState): number | undefined {
  const told = countingEntries(state).findLast(
    ({ event }) => event.kind === 'surroundings-told' && event.body.of === 'room',
  )
  const about = told && surroundingsIn(told.event)
  return about?.of === 'room' ? about.temperatureC : state.header.ambientC
}

function asymptoteOf(
  step: { readonly kind: 'heat' } | { readonly kind: 'cool'; readonly by: 'air' | 'bath' },
  roomC: number | undefined,
  bathC: number | undefined,
): Asymptote | null {
  if (step.kind === 'heat') return plateAsymptote
  if (step.by === 'bath') return bathAsymptote(bathC)
  return roomC === undefined ? null : roomAsymptote(roomC)
}

interface Timed {
  readonly atMs: number
  readonly event: BatchEvent
}

/** Kinds that change a vessel's course. */
const telling: ReadonlySet<string> = new Set([
  'weighed',
  'unplanned-added',
  'adjusted',
  'made-up',
  'charged',
  'transferred',
  'step-finished',
  'step-skipped',
  'bath-changed',
  'surroundings-told',
])

const countingEntries = (state: BatchState): readonly Timed[] =>
  state.entries.flatMap(({ event, struck }) =>
    struck || !telling.has(event.kind) || !isKnown(event) ? [] : [{ atMs: momentOf(event), event }],
  )

const momentOf = (event: Event): number => msOf(event.occurredAt ?? event.at)

/** When something last went into the vessel, or an earlier step of it came to its end. */
function lastChangeMs(state: BatchState, entries: readonly Timed[], vessel: string, stepId: string): number {
  const isChange = (event: BatchEvent): boolean => {
    switch (event.kind) {
      case 'weighed':
      case 'unplanned-added':
      case 'adjusted':
      case 'made-up':
        return event.body.vessel === vessel
      case 'charged':
      case 'transferred':
        return event.body.to === vessel
      case 'step-finished':
      case 'step-skipped': {
        const of = state.plan.byId.get(event.body.step)
        return of !== undefined && of.id !== stepId && of.step.vessel === vessel
      }
      default:
        return false
    }
  }
  return entries.reduce((latest, { atMs, event }) => (isChange(event) ? Math.max(latest, atMs) : latest), 0)
}

/** Another bath, a cover off, another set point: in order of time. */
export function changesOf(state: BatchState, vessel: string): ThermalCourse['marks'] {
  let set: number | 'plain' | null = null
  const changes: { atMs: number; what: string }[] = []
  for (const { atMs, event } of countingEntries(state)) {
    if (event.kind === 'bath-changed' && event.body.vessel === vessel) changes.push({ atMs, what: event.body.what })
    const about = surroundingsIn(event)
    if (about?.of !== 'plate' || about.vessel !== vessel) continue
    const now = about.setC ?? 'plain'
    if (set !== null && set !== now) changes.push({ atMs, what: 'plate set anew' })
    set = now
  }
  return changes.sort((a, b) => a.atMs - b.atMs)
}

/** The bath as it was read since it was last changed. */
function bathOf(entries: readonly Timed[], vessel: string, sinceMs: number): number | undefined {
  const read = entries.findLast(({ atMs, event }) => {
    const about = surroundingsIn(event)
    return about?.of === 'bath' && about.vessel === vessel && atMs >= sinceMs
  })
  const about = read && surroundingsIn(read.event)
  return about?.of === 'bath' ? about.temperatureC : undefined
}

function plateOf(entries: readonly Timed[], vessel: string): Extract<Surroundings, { of: 'plate' }> | undefined {
  const told = entries.findLast(({ event }) => {
    const about = surroundingsIn(event)
    return about?.of === 'plate' && about.vessel === vessel
  })
  const about = told && surroundingsIn(told.event)
  return about?.of === 'plate' ? about : undefined
}

const surroundingsIn = (event: BatchEvent): Surroundings | undefined =>
  event.kind === 'surroundings-told' ? event.body : undefined
