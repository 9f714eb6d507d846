import type { Format } from '../../app/format'
import { unitOf } from '../../batch/how-read'
import { type Course, monthDays } from '../../batch/stability-trend'
import type { PlotPicture } from '../../parts/plot-picture'
import { figure } from './figure'

/** Points of a line; more are not seen. */
const steps = 24

/** A measure against the weeks its jars stood: results, line, where one more is expected, the limits. */
export function coursePicture({ measure, condition, points, drift }: Course, format: Format): PlotPicture {
  const shown = (value: number): string => figure(value, format, measure.property === 'pH' ? 2 : undefined)
  const perUnit = condition.cycles ? 1 : 7
  const last = points.at(-1)
  const { min, max } = measure.limits ?? {}
  const lines = drift === undefined ? {} : linesOf(drift, last?.at ?? 0)
  return {
    x: { label: condition.cycles ? 'cycles' : 'weeks', ticks: 'number', format: (value) => format.number(value) },
    y: { label: unitOf(measure) ?? (measure.property === 'pH' ? 'pH' : ''), ticks: 'number', format: shown },
    points: points.map((point) => ({ x: point.at / perUnit, y: point.value, strong: point === last })),
    ...lines,
    ...(min === undefined && max === undefined
      ? {}
      : {
          zone: {
            ...(min === undefined ? {} : { from: min }),
            ...(max === undefined ? {} : { to: max }),
            text: 'limits',
          },
        }),
  }
}

/** The line goes on, dashed, to where a limit is met or as far again as the results reach. */
function linesOf({ trend, shelf, bandAt }: NonNullable<Course['drift']>, lastDays: number) {
  const crossDays = shelf.supported === null ? 0 : shelf.supported * monthDays
  const endDays = crossDays > lastDays && crossDays <= 2 * lastDays ? crossDays * 1.3 : lastDays * 1.3
  const along = (from: number, to: number) =>
    Array.from({ length: steps }, (_, index) => from + ((to - from) * index) / (steps - 1))
  const yAt = (days: number): number => trend.intercept + (trend.slope * days) / monthDays
  const on = (days: readonly number[]) => days.map((each) => ({ x: each / 7, y: yAt(each) }))
  return {
    curve: on(along(0, lastDays)),
    ahead: on(along(lastDays, endDays)),
    band: along(0, endDays).map((each) => {
      const { low, high } = bandAt(each)
      return { x: each / 7, low, high }
    }),
    ...(crossDays > 0 && crossDays <= endDays ? { marks: [{ x: crossDays / 7, text: 'at limit' }] } : {}),
  }
}
