import { replicatesOf } from '../trade/replicates'
import { absurdMeasurement } from './absurd'
import { densityOf, type HowRead, needsUnit, scaleOf } from './how-read'
import type { Bodies } from './kinds'
import type { BatchRefusal } from './refusal'

type Result = Bodies['measured']

/** What was read several times counts by its mean, and what was weighed by its density: neither is taken on trust. */
export function withMean(result: Result): Result {
  const { readings, how } = result
  const mean = replicatesOf(readings ?? [])?.mean
  if (mean !== undefined) return { ...result, value: mean }
  if (result.property !== 'density' || how?.massUg === undefined || !how.volumeMl) return result
  return { ...result, value: densityOf(how.massUg, how.volumeMl) }
}

/** What is wrong with a result beyond its figure: no unit, a reading that cannot be, a way of reading that cannot. */
export function unsoundResult(result: Result): BatchRefusal | null {
  const { property, label, value, unit, readings = [], how } = result
  for (const reading of readings) {
    const absurd = absurdMeasurement({ property, label, value: reading })
    if (absurd) return absurd
  }
  if (value !== undefined && needsUnit(property) && (unit ?? '').trim() === '') return { code: 'UNIT_MISSING', label }
  if (property === 'feel') {
    const { least, most } = scaleOf({ ...(how?.scale ? { scale: how.scale } : {}) })
    const given = readings.length > 0 ? readings : value === undefined ? [] : [value]
    const off = given.find((each) => !(Number.isInteger(each) && each >= least && each <= most))
    if (off !== undefined) return { code: 'OFF_SCALE', label, value: off, least, most }
  }
  return how === undefined ? null : absurdHow(how, label)
}

/** Torque may be past its scale, so that it can be warned of; a speed or a time of nothing was not read. */
function absurdHow({ rpm, torquePercent, volumeMl, massUg, later, spin }: HowRead, label: string): BatchRefusal | null {
  const figures: readonly (readonly [string, number | undefined, number, number])[] = [
    ['speed', rpm, 0.01, 2000],
    ['torque', torquePercent, 0, 200],
    ['volume', volumeMl, 0.01, 100_000],
    ['mass', massUg === undefined ? undefined : massUg / 1e6, 0.001, 100_000],
    ['time', later?.minutes, 0.1, 1440],
    ['height', later?.value, 0, 1e6],
    ['speed', spin?.figure, 1, 200_000],
    ['time', spin?.minutes, 0.1, 1440],
  ]
  const bad = figures.find(([, value, least, most]) => value !== undefined && !(value >= least && value <= most))
  return bad === undefined ? null : { code: 'HOW_ABSURD', label, what: bad[0], value: bad[1] ?? Number.NaN }
}
