import type { AdjustCurve, HeatCurve } from '../../batch/record-curves'
import { figure } from './figure'
import type { PaperProps } from './paper-props'
import { StillPlot } from './still-plot'

/** What was read over time and over portions, drawn and written out. */
export function PaperCurves({ record, format }: PaperProps) {
  const { heatCurves, adjustCurves } = record
  if (heatCurves.length + adjustCurves.length === 0) return null
  return (
    <section class="paper-section">
      <h2>Readings and curves</h2>
      <div class="paper-curves">
        {heatCurves.map((curve) => (
          <Heat key={curve.vessel} curve={curve} format={format} />
        ))}
        {adjustCurves.map((curve) => (
          <Adjust key={curve.step} curve={curve} format={format} />
        ))}
      </div>
    </section>
  )
}

function Heat({ curve, format }: { curve: HeatCurve; format: PaperProps['format'] }) {
  const { name, readings } = curve
  return (
    <figure class="paper-curve">
      <figcaption>{name}, °C over time</figcaption>
      <StillPlot
        label={`${name}: temperature over time, ${readings.length} readings`}
        points={readings.map(({ atMs, temperatureC }) => ({ x: atMs, y: temperatureC }))}
        x={{ ticks: 'time', format: format.time }}
        y={{ ticks: 'number', format: (value) => format.number(value) }}
      />
      <p class="paper-small">
        {readings.map(({ atMs, temperatureC }) => `${format.time(atMs)} ${format.number(temperatureC, 1)}`).join(' · ')}
      </p>
    </figure>
  )
}

function Adjust({ curve, format }: { curve: AdjustCurve; format: PaperProps['format'] }) {
  const { property, adjuster, check, points } = curve
  const shown = (value: number): string => figure(value, format, property === 'pH' ? 2 : undefined)
  const unit = check?.unit === undefined ? '' : `, ${check.unit}`
  return (
    <figure class="paper-curve">
      <figcaption>
        {property === 'pH' ? 'pH' : `Viscosity${unit}`} over {adjuster}, g
      </figcaption>
      <StillPlot
        label={`${property} over ${adjuster} added, ${points.length} readings`}
        points={points.map(({ addedUg, value }) => ({ x: addedUg / 1e6, y: value }))}
        zone={check?.limits}
        x={{ ticks: 'number', format: (value) => format.number(value) }}
        y={{ ticks: 'number', format: (value) => figure(value, format) }}
      />
      <p class="paper-small">
        {points.map(({ addedUg, value }) => `${format.massWithUnit(addedUg, 1000)} ${shown(value)}`).join(' · ')}
      </p>
    </figure>
  )
}
