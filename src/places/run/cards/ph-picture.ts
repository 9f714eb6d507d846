import type { Format } from '../../../app/format'
import type { Adjusting } from '../../../batch/adjusting'
import type { PlotPicture } from '../../../parts/plot-picture'
import { gramsFromMicrograms } from '../../../trade/mass-ratio'

/** pH against grams: what was read, the window, and the addition that is proposed. */
export function phPicture(adjusting: Adjusting, format: Format): PlotPicture {
  const { check, line, readings, advice } = adjusting
  const { min, max } = check.limits ?? {}
  const ph = (value: number): string => format.number(value, 2)
  const comparable = readings.filter(({ leftOut }) => leftOut === undefined)
  const isDoubted = advice.ok && advice.value.do === 'read-again'
  // Of several readings of one amount the last one counts; where they contradict each other, both are to be seen.
  const counted = comparable.filter(({ addedUg }, index) => isDoubted || comparable[index + 1]?.addedUg !== addedUg)
  const points = counted.map((reading, index) => ({
    x: gramsFromMicrograms(reading.addedUg),
    y: reading.ph,
    ...(index === counted.length - 1 ? { text: `${ph(reading.ph)} now`, strong: true } : {}),
  }))
  const picture: PlotPicture = {
    x: { label: `grams of ${line.material.name} so far`, ticks: 'number', format: (value) => format.number(value) },
    y: { label: check.label, ticks: 'number', format: ph },
    points,
    curve: points,
    zone: {
      ...(min === undefined ? {} : { from: min }),
      ...(max === undefined ? {} : { to: max }),
      text: min === undefined || max === undefined ? 'window' : `window ${format.number(min)} to ${format.number(max)}`,
    },
  }
  const from = points.at(-1)
  if (!advice.ok || advice.value.do !== 'add' || from === undefined) return picture
  const { doseUg, reaches } = advice.value
  const toX = gramsFromMicrograms(adjusting.addedUg + doseUg)
  const step = { from, toX, text: `add ${format.massWithUnit(doseUg, line.balance.stepUg)}` }
  if (reaches === undefined) return { ...picture, step }
  const { expected, furthest } = reaches
  return {
    ...picture,
    ahead: [from, { x: toX, y: expected }],
    band: [
      { x: from.x, low: from.y, high: from.y },
      { x: toX, low: Math.min(expected, furthest), high: Math.max(expected, furthest) },
    ],
    step: { ...step, y: expected, leadsTo: ph(expected), note: `not past ${ph(furthest)}` },
  }
}
