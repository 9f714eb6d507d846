import type { Format } from '../../app/format'
import type { ComparedBatch, ComparedRow } from '../../batch/compare-batches'
import { numberTicks, rangeRound } from '../../parts/plot-ticks'
import { useWidth } from '../../parts/use-width'
import { limitsOff, rowFigure } from './batches-figures'

interface ChartProps {
  row: ComparedRow
  /** In the order of the row's cells, the oldest first. */
  batches: readonly ComparedBatch[]
  format: Format
}

const tallPx = 240
const edge = { left: 76, right: 16, top: 16, bottom: 44 }

/** One measure over the batches in the order they were made, with its limits and its median. */
export function RunChart({ row, batches, format }: ChartProps) {
  const { ref, widthPx } = useWidth<HTMLElement>('run-chart')
  const points = row.cells.flatMap((cell, at) => (cell === null ? [] : [{ at, value: cell.value }]))
  const { min, max } = row.limits ?? {}
  const bounds = [min, max].flatMap((bound) => bound ?? [])
  const [low, high] = rangeRound([...points.map(({ value }) => value), ...bounds])
  const innerPx = Math.max(1, widthPx - edge.left - edge.right)
  const x = (at: number): number => edge.left + (innerPx * (at + 0.5)) / Math.max(1, batches.length)
  const y = (value: number): number => edge.top + ((high - value) / (high - low)) * (tallPx - edge.top - edge.bottom)
  const codeOf = (at: number): string => batches[at]?.code ?? ''
  const says = `${row.label}, ${points.map(({ at, value }) => `${codeOf(at)} ${rowFigure(row, value, format)}`).join(', ')}.`
  const median = medianOf(points.map(({ value }) => value))
  return (
    <figure class="chart" ref={ref}>
      {widthPx > 0 && (
        <svg role="img" aria-label={says} width="100%" viewBox={`0 0 ${widthPx} ${tallPx}`}>
          {numberTicks(low, high, 5).map((tick) => (
            <g key={tick}>
              <line class="chart-grid" x1={edge.left} x2={widthPx - edge.right} y1={y(tick)} y2={y(tick)} />
              <text class="chart-tick" x={edge.left - 8} y={y(tick)}>
                {format.number(tick)}
              </text>
            </g>
          ))}
          {bounds.map((bound) => (
            <line
              key={bound}
              class="chart-limit"
              x1={edge.left}
              x2={widthPx - edge.right}
              y1={y(bound)}
              y2={y(bound)}
            />
          ))}
          <line class="chart-median" x1={edge.left} x2={widthPx - edge.right} y1={y(median)} y2={y(median)} />
          <polyline class="chart-line" points={points.map(({ at, value }) => `${x(at)},${y(value)}`).join(' ')} />
          {points.map(({ at, value }) => (
            <Point key={at} x={x(at)} y={y(value)} isOff={limitsOff(row, value)} />
          ))}
          {batches.map(({ id, code }, at) => (
            <text key={id} class="chart-code" x={x(at)} y={tallPx - 16}>
              {shortCode(code, innerPx / batches.length)}
            </text>
          ))}
        </svg>
      )}
      <figcaption class="formulas-hint">
        {bounds.length > 0 &&
          `Limits ${bounds.map((bound) => rowFigure(row, bound, format)).join(' and ')}, broken line. `}
        Median {rowFigure(row, median, format)}, thin line.
      </figcaption>
    </figure>
  )
}

/** Out of limits is told by shape as well as by colour. */
const Point = ({ x, y, isOff }: { x: number; y: number; isOff: boolean }) =>
  isOff ? <path class="chart-off" d={`M${x} ${y - 9}l9 15h-18z`} /> : <circle class="chart-point" cx={x} cy={y} r="6" />

/** The end of a code tells batches of one formula apart. */
const shortCode = (code: string, roomPx: number): string => (roomPx > code.length * 10 ? code : code.slice(-3))

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length / 2
  return ((sorted[Math.ceil(middle) - 1] ?? 0) + (sorted[Math.floor(middle)] ?? 0)) / 2
}
