import { useMemo } from 'preact/hooks'
import { clockRange } from '../../../app/forecast-words'
import { Plot } from '../../../app/late-plot'
import type { Forecast } from '../../../batch/forecast'
import { temperatureAt, temperatureErrorAt } from '../../../trade/newton'
import { useStep } from './use-step'

/** Points of a curve; more are not seen. */
const steps = 40
/** Two standard errors: about the 95 % that the words promise. */
const bandWidth = 2

interface ThermalChartProps {
  step: { readonly id: string; readonly vessel: string }
  forecast: Forecast
  /** What the words beside it say, for those who do not see the picture. */
  says: string
  /** What may be done once the target is reached. */
  zoneText: string
}

/** Readings, the curve through them, how sure it is, and the target. */
export function ThermalChart({ step, forecast, says, zoneText }: ThermalChartProps) {
  const { format, vesselName, nowMs } = useStep(step)
  const { course } = forecast
  const lines = useMemo(() => linesOf(forecast), [forecast])
  const points = course.readings.map(({ atMs, temperatureC }, index) => {
    const isLast = index === course.readings.length - 1
    const text = format.number(temperatureC)
    return {
      x: atMs,
      y: temperatureC,
      text: isLast ? `${text} ${nowMs - atMs < 60_000 ? 'now' : 'last'}` : text,
      strong: isLast,
    }
  })
  const { reach } = forecast
  return (
    <Plot
      label={`${vesselName}, °C by time. ${says}`}
      x={{ label: 'At', ticks: 'time', format: format.time }}
      y={{ label: '°C', ticks: 'number', format: (celsius) => format.number(celsius) }}
      points={points}
      {...lines}
      zone={
        course.kind === 'cooling' ? { to: course.targetC, text: zoneText } : { from: course.targetC, text: zoneText }
      }
      reach={
        reach && {
          y: course.targetC,
          from: reach.fromMs,
          to: reach.toMs,
          text: clockRange(reach, format.time),
        }
      }
      marks={course.marks.map(({ atMs, what }) => ({ x: atMs, text: what }))}
    />
  )
}

function linesOf({ outlook, reach, lastAtMs }: Forecast) {
  if (outlook.kind !== 'time' || reach === undefined || lastAtMs === undefined) return {}
  const { fit } = outlook
  const firstMs = lastAtMs - (fit.lastMin - fit.firstMin) * 60_000
  const at = (ms: number): number => temperatureAt(fit, fit.firstMin + (ms - firstMs) / 60_000)
  const error = (ms: number): number => temperatureErrorAt(fit, fit.firstMin + (ms - firstMs) / 60_000)
  const endMs = reach.toMs + (reach.toMs - firstMs) * 0.06
  const along = (fromMs: number, toMs: number): readonly number[] =>
    Array.from({ length: steps }, (_, index) => fromMs + ((toMs - fromMs) * index) / (steps - 1))
  const past = along(firstMs, lastAtMs)
  const future = along(lastAtMs, Math.max(endMs, lastAtMs + 60_000))
  return {
    curve: past.map((x) => ({ x, y: at(x) })),
    ahead: future.map((x) => ({ x, y: at(x) })),
    band: future.map((x) => ({ x, low: at(x) - bandWidth * error(x), high: at(x) + bandWidth * error(x) })),
  }
}
