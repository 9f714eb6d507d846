import type { Format } from '../../../app/format'
import type { Check } from '../../../batch/formula'
import type { Thickening } from '../../../batch/thickening'
import type { PlotPicture } from '../../../parts/plot-picture'
import { gramsFromMicrograms } from '../../../trade/mass-ratio'

/** Viscosity against grams: what was read, and the window. */
export function viscosityPicture(
  { readings }: Thickening,
  { label, unit, limits }: Check,
  material: string,
  format: Format,
): PlotPicture {
  const points = readings.map(({ addedUg, value }, index) => ({
    x: gramsFromMicrograms(addedUg),
    y: value,
    ...(index === readings.length - 1 ? { text: `${format.number(value)} now`, strong: true } : {}),
  }))
  const { min, max } = limits ?? {}
  return {
    x: { label: `grams of ${material} so far`, ticks: 'number', format: (value) => format.number(value) },
    y: { label: unit ?? label, ticks: 'number', format: (value) => format.number(value) },
    points,
    curve: points,
    ...(limits === undefined
      ? {}
      : {
          zone: {
            ...(min === undefined ? {} : { from: min }),
            ...(max === undefined ? {} : { to: max }),
            text: 'window',
          },
        }),
  }
}
