import { numberTicks, rangeRound, timeTicks } from '../../parts/plot-ticks'

interface StillAxis {
  readonly ticks: 'number' | 'time'
  readonly format: (value: number) => string
}

interface StillPlotProps {
  label: string
  points: readonly { readonly x: number; readonly y: number }[]
  /** What is aimed at, open where an end is absent. */
  zone?: { readonly min?: number; readonly max?: number } | undefined
  x: StillAxis
  y: StillAxis
}

const wide = 460
const tall = 190
const [left, right, top, bottom] = [64, wide - 16, 10, tall - 28]

/** A plot that stays as it is: it prints, and goes into a file. Its size is a ratio, not pixels. */
export function StillPlot({ label, points, zone, x, y }: StillPlotProps) {
  const [minX, maxX] = rangeRound(points.map((point) => point.x))
  const limits = [zone?.min, zone?.max].flatMap((limit) => limit ?? [])
  const [minY, maxY] = rangeRound([...points.map((point) => point.y), ...limits], 0.1)
  const atX = (value: number): number => round(left + ((value - minX) / (maxX - minX)) * (right - left))
  const atY = (value: number): number => round(bottom - ((value - minY) / (maxY - minY)) * (bottom - top))
  const ticksOf = (axis: StillAxis, min: number, max: number, most: number): readonly number[] =>
    axis.ticks === 'time' ? timeTicks(min, max, most) : numberTicks(min, max, most)
  return (
    <svg class="still-plot" role="img" aria-label={label} viewBox={`0 0 ${wide} ${tall}`}>
      {limits.length > 0 && (
        <rect
          class="still-plot-zone"
          x={left}
          width={right - left}
          y={atY(zone?.max ?? maxY)}
          height={Math.max(1, atY(zone?.min ?? minY) - atY(zone?.max ?? maxY))}
        />
      )}
      {ticksOf(y, minY, maxY, 4).map((tick) => (
        <g key={tick}>
          <line class="still-plot-grid" x1={left} x2={right} y1={atY(tick)} y2={atY(tick)} />
          <text class="still-plot-y" x={left - 6} y={atY(tick)}>
            {y.format(tick)}
          </text>
        </g>
      ))}
      {ticksOf(x, minX, maxX, 4).map((tick) => (
        <text key={tick} class="still-plot-x" x={atX(tick)} y={tall - 6}>
          {x.format(tick)}
        </text>
      ))}
      <polyline class="still-plot-line" points={points.map((point) => `${atX(point.x)},${atY(point.y)}`).join(' ')} />
      {points.map((point, index) => (
        <circle key={index} class="still-plot-point" cx={atX(point.x)} cy={atY(point.y)} r="4" />
      ))}
    </svg>
  )
}

const round = (value: number): number => Math.round(value * 10) / 10
