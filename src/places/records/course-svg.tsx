import type { PlotPicture, XY } from '../../parts/plot-picture'

const [width, height] = [360, 190]
const [left, right, top, bottom] = [56, 12, 12, 34]

/** The same picture for paper: lines that stay sharp, in the ink of the print. */
export function CourseSvg({ picture, label }: { picture: PlotPicture; label: string }) {
  const { points, curve = [], ahead = [], band = [], zone, x, y } = picture
  const [xLow, xHigh] = spanOf([...points, ...ahead].map((point) => point.x).concat(0))
  const [yLow, yHigh] = spanOf([
    ...[...points, ...ahead].map((point) => point.y),
    ...band.flatMap(({ low, high }) => [low, high]),
    ...[zone?.from, zone?.to].filter((limit) => limit !== undefined),
  ])
  const xOf = (value: number): number => left + ((value - xLow) / (xHigh - xLow)) * (width - left - right)
  const yOf = (value: number): number => height - bottom - ((value - yLow) / (yHigh - yLow)) * (height - top - bottom)
  const path = (line: readonly XY[]): string =>
    line.map((at, index) => `${index === 0 ? 'M' : 'L'}${xOf(at.x).toFixed(1)} ${yOf(at.y).toFixed(1)}`).join('')
  const upper = band.map(({ x: at, high }) => ({ x: at, y: high }))
  const lower = band.map(({ x: at, low }) => ({ x: at, y: low })).reverse()
  return (
    <svg class="course-svg" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      {band.length > 0 && <path class="course-svg-band" d={`${path([...upper, ...lower])}Z`} />}
      <path class="course-svg-axis" d={`M${left} ${top}V${height - bottom}H${width - right}`} />
      {[zone?.from, zone?.to].map(
        (limit) =>
          limit !== undefined && (
            <g key={limit}>
              <path class="course-svg-limit" d={`M${left} ${yOf(limit)}H${width - right}`} />
              <text x={left - 6} y={yOf(limit) + 4} text-anchor="end">
                {y.format(limit)}
              </text>
            </g>
          ),
      )}
      <path class="course-svg-line" d={path(curve)} />
      <path class="course-svg-line" d={path(ahead)} stroke-dasharray="4 4" />
      {points.map((point) => (
        <circle key={`${point.x} ${point.y}`} cx={xOf(point.x)} cy={yOf(point.y)} r="3.5" />
      ))}
      {[0, Math.round(xHigh / 2), Math.floor(xHigh)].map((tick) => (
        <text key={tick} x={xOf(tick)} y={height - bottom + 15} text-anchor="middle">
          {x.format(tick)}
        </text>
      ))}
      <text x={width - right} y={height - 4} text-anchor="end">
        {x.label}
      </text>
    </svg>
  )
}

/** Lowest and highest with a little air; never the same. */
function spanOf(values: readonly number[]): readonly [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const air = (high - low || 1) * 0.06
  return [low - air, high + air]
}
