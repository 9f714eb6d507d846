import type { Micrograms } from '../trade/mass'
import type { Check } from './formula'
import { entriesOf } from './record-entries'
import { vesselName } from './record-materials'
import type { TemperatureReading } from './record-readings'
import type { BatchState } from './state'

/** What was read of one vessel over the whole batch, oldest first. */
export interface HeatCurve {
  readonly vessel: string
  readonly name: string
  readonly readings: readonly TemperatureReading[]
}

/** What was read while something was adjusted, over what had gone in of it. */
export interface AdjustCurve {
  readonly step: string
  readonly property: 'pH' | 'viscosity'
  readonly adjuster: string
  readonly check?: Check
  readonly points: readonly { readonly atMs: number; readonly addedUg: Micrograms; readonly value: number }[]
}

/** Vessels with at least two readings that count: one is no curve. */
export function heatCurves(state: BatchState): readonly HeatCurve[] {
  const byVessel = new Map<string, TemperatureReading[]>()
  for (const { struck, atMs, event } of entriesOf(state, 'temperature-read', same)) {
    const { vessel, temperatureC } = event.body
    if (!struck) byVessel.set(vessel, [...(byVessel.get(vessel) ?? []), { atMs, temperatureC }])
  }
  return [...byVessel].flatMap(([vessel, readings]) =>
    readings.length < 2
      ? []
      : [{ vessel, name: vesselName(state, vessel), readings: readings.sort((a, b) => a.atMs - b.atMs) }],
  )
}

export function adjustCurves(state: BatchState): readonly AdjustCurve[] {
  const portions = entriesOf(state, 'adjusted', same).filter(({ struck }) => !struck)
  const read = entriesOf(state, 'measured', same).filter(({ struck }) => !struck)
  const places = new Map(state.entries.map(({ event }, index) => [event.id, index]))
  const before = (one: string, other: string): boolean => (places.get(one) ?? 0) < (places.get(other) ?? 0)
  return state.plan.steps.flatMap(({ id, step, line }) => {
    if (step.kind !== 'adjust') return []
    const points = read
      .filter(({ event: { body } }) => body.step === id && body.check === step.check && body.value !== undefined)
      .map(({ atMs, entry, event }) => {
        const own = portions.filter((each) => each.event.body.step === id && before(each.entry, entry))
        const addedUg = own.reduce((sum, each) => sum + each.event.body.netUg, 0)
        return { atMs, addedUg, value: event.body.value ?? 0 }
      })
    if (points.length === 0) return []
    const check = state.header.revision.specification.find((each) => each.id === step.check)
    const adjuster = line?.material.name ?? step.line
    return [{ step: id, property: step.property, adjuster, points, ...(check === undefined ? {} : { check }) }]
  })
}

const same = (id: string): string => id
