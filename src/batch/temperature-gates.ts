import { contentsOf } from '../trade/ledger'
import type { Gate } from './gate'
import type { PlannedStep } from './plan'
import { vesselNow } from './progress'
import type { BatchState } from './state'

/** A reading counts for this long where the formula states nothing. */
const usualAgeMinutes = 15

/** A plate's thermometer never sits on the figure: this much below still counts as reached. */
const reachedWithinC = 1

/** Gates that read the thermometer: heat-sensitive lines, phases to be combined hot, heating and cooling to a figure. */
export function temperatureGates(
  state: BatchState,
  planned: PlannedStep,
  nowMs: number,
  moment: 'begin' | 'finish',
): readonly Gate[] {
  const { step } = planned
  switch (step.kind) {
    case 'weigh':
      return moment === 'begin' ? sensitiveGates(state, step.vessel, [step.line], nowMs) : []
    case 'charge':
      return moment === 'begin'
        ? sensitiveGates(state, step.vessel, [...contentsOf(state.ledger, step.cup).keys()], nowMs)
        : []
    case 'combine':
      return moment === 'begin' ? combineGates(state, step, nowMs) : []
    case 'heat':
      return moment === 'finish' ? warmGate(state, step.vessel, step.targetC, nowMs) : []
    case 'cool':
      return moment === 'finish' ? coolGate(state, step.vessel, step.targetC, nowMs) : []
    default:
      return []
  }
}

interface Last {
  readonly vessel: string
  readonly temperatureC: number
  readonly ageMs: number
  /** A pass holds for the reading that it was given for. */
  readonly entry: string
}

/** The last reading of where a vessel's contents are now. */
export function lastReading(state: BatchState, vesselId: string, nowMs: number): Last | undefined {
  const vessel = vesselNow(state, vesselId)
  const reading = state.vessels.get(vessel)?.readings.at(-1)
  if (reading === undefined) return undefined
  const { temperatureC, atMs, entry } = reading
  return { vessel, temperatureC, ageMs: nowMs - atMs, entry }
}

/** Heat-sensitive lines wait while the vessel they go into is too hot, or nobody has looked lately. */
function sensitiveGates(state: BatchState, into: string, lines: readonly string[], nowMs: number): readonly Gate[] {
  const vessel = vesselNow(state, into)
  const sensitive = lines
    .map((line) => state.plan.lines.get(line)?.material)
    .filter((material) => material?.maxTemperatureC !== undefined)
    .sort((a, b) => (a?.maxTemperatureC ?? 0) - (b?.maxTemperatureC ?? 0))[0]
  const limitC = sensitive?.maxTemperatureC
  if (limitC === undefined || !hasBeenHot(state, vessel, limitC)) return []
  const last = lastReading(state, vessel, nowMs)
  if (!last) return [{ code: 'TEMPERATURE_UNKNOWN', key: 'TEMPERATURE_UNKNOWN', passable: true, vessel, limitC }]
  if (last.temperatureC > limitC) {
    const material = sensitive?.name
    return [
      {
        code: 'TOO_HOT',
        key: `TOO_HOT:${last.entry}`,
        passable: true,
        vessel,
        limitC,
        lastC: last.temperatureC,
        ageMs: last.ageMs,
        ...(material === undefined ? {} : { material }),
      },
    ]
  }
  return oldGate(state, last, limitC)
}

/** A vessel at room temperature needs no thermometer: only one that was heated, or was read hot, does. */
function hasBeenHot(state: BatchState, vesselId: string, limitC: number): boolean {
  const feeds = [...state.vessels.values()].filter((vessel) => vesselNow(state, vessel.id) === vesselId)
  return feeds.some((vessel) => {
    const heated = state.plan.steps.some(({ id, step }) => {
      const progress = state.steps.get(id)
      const begun = progress?.startedAtMs !== undefined || progress?.finished?.how === 'done'
      return step.kind === 'heat' && step.vessel === vessel.id && step.targetC > limitC && begun
    })
    return heated || vessel.readings.some((reading) => reading.temperatureC > limitC)
  })
}

function combineGates(
  state: BatchState,
  step: {
    readonly vessel: string
    readonly from: string
    readonly maxDifferenceC?: number
    readonly bothAtLeastC?: number
  },
  nowMs: number,
): readonly Gate[] {
  const { maxDifferenceC: mostC, bothAtLeastC: leastC } = step
  if (mostC === undefined && leastC === undefined) return []
  const gates: Gate[] = []
  const readings: Last[] = []
  for (const vessel of [step.vessel, step.from]) {
    const last = lastReading(state, vessel, nowMs)
    if (!last) {
      const wanted = leastC === undefined ? {} : { limitC: leastC }
      gates.push({
        code: 'TEMPERATURE_UNKNOWN',
        key: `TEMPERATURE_UNKNOWN:${vessel}`,
        passable: true,
        vessel,
        ...wanted,
      })
      continue
    }
    readings.push(last)
    if (leastC !== undefined && last.temperatureC < leastC - reachedWithinC) {
      gates.push({
        code: 'NOT_YET_WARM',
        key: `NOT_YET_WARM:${vessel}:${last.entry}`,
        passable: true,
        vessel,
        leastC,
        lastC: last.temperatureC,
      })
    } else {
      gates.push(...oldGate(state, last, leastC ?? last.temperatureC))
    }
  }
  const [into, from] = readings
  if (mostC !== undefined && into && from) {
    const differenceC = Math.abs(into.temperatureC - from.temperatureC)
    if (differenceC > mostC)
      gates.push({
        code: 'TOO_FAR_APART',
        key: `TOO_FAR_APART:${into.entry}:${from.entry}`,
        passable: true,
        differenceC,
        mostC,
      })
  }
  return gates
}

function warmGate(state: BatchState, vessel: string, leastC: number, nowMs: number): readonly Gate[] {
  const last = lastReading(state, vessel, nowMs)
  if (!last)
    return [{ code: 'TEMPERATURE_UNKNOWN', key: 'TEMPERATURE_UNKNOWN', passable: true, vessel, limitC: leastC }]
  if (last.temperatureC >= leastC - reachedWithinC) return []
  return [
    {
      code: 'NOT_YET_WARM',
      key: `NOT_YET_WARM:${last.entry}`,
      passable: true,
      vessel,
      leastC,
      lastC: last.temperatureC,
    },
  ]
}

function coolGate(state: BatchState, vessel: string, limitC: number, nowMs: number): readonly Gate[] {
  const last = lastReading(state, vessel, nowMs)
  if (!last) return [{ code: 'TEMPERATURE_UNKNOWN', key: 'TEMPERATURE_UNKNOWN', passable: true, vessel, limitC }]
  if (last.temperatureC <= limitC) return []
  return [
    {
      code: 'TOO_HOT',
      key: `TOO_HOT:${last.entry}`,
      passable: true,
      vessel,
      limitC,
      lastC: last.temperatureC,
      ageMs: last.ageMs,
    },
  ]
}

function oldGate(state: BatchState, last: Last, limitC: number): readonly Gate[] {
  const mostMs = (state.header.revision.readingAgeMinutes ?? usualAgeMinutes) * 60_000
  if (last.ageMs <= mostMs) return []
  const { vessel, temperatureC: lastC, ageMs, entry } = last
  return [
    {
      code: 'TEMPERATURE_OLD',
      key: `TEMPERATURE_OLD:${vessel}:${entry}`,
      passable: true,
      vessel,
      limitC,
      lastC,
      ageMs,
    },
  ]
}
