import './waterfall.css'
import { useId } from 'preact/hooks'
import { useWidth } from './use-width.ts'
import { type Fall, fallScale } from './waterfall-geometry.ts'

export type FallTone = 'whole' | 'loss' | 'gain' | 'open' | 'over' | 'good'

export interface FallRow extends Fall {
  readonly label: string
  /** The figure as it is shown: "−12.10 g". */
  readonly text: string
  readonly tone: FallTone
}

interface WaterfallProps {
  rows: readonly FallRow[]
  /** What the picture is of: "From theoretical to filled". */
  caption: string
  /** Said under it where the bars do not begin at nothing. */
  cutText: (base: number) => string
}

const rowPx = 36
const barPx = 22

/** From a whole, step by step, to what is left of it: each bar begins where the one above it ended. */
export function Waterfall({ rows, caption, cutText }: WaterfallProps) {
  const { ref, widthPx } = useWidth<HTMLElement>('waterfall')
  const hatch = useId()
  const labelPx = widthPx < 420 ? 112 : 176
  const figurePx = widthPx < 420 ? 84 : 104
  const scale = fallScale(rows, Math.max(40, widthPx - labelPx - figurePx - 12))
  const x = (level: number): number => labelPx + scale.at(level)
  const tallPx = rows.length * rowPx
  const says = `${caption}: ${rows.map(({ label, text }) => `${label} ${text}`).join(', ')}.`
  return (
    <figure class="fall" ref={ref}>
      {widthPx > 0 && (
        <svg role="img" aria-label={says} width="100%" viewBox={`0 0 ${widthPx} ${tallPx}`}>
          <defs>
            <pattern id={hatch} width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <rect width="8" height="8" class="fall-ground" />
              <rect width="3" height="8" class="fall-stripe" />
            </pattern>
          </defs>
          {rows.map((row, index) => {
            const topPx = index * rowPx + (rowPx - barPx) / 2
            const [left, right] = [row.kind === 'whole' ? scale.base : row.from, row.to].map(x).sort((a, b) => a - b)
            const fromPx = left ?? 0
            const widePx = Math.max(2, (right ?? 0) - fromPx)
            return (
              <g key={row.label} class={`fall-${row.tone}`}>
                <text x="0" y={topPx + barPx / 2} class="fall-label">
                  {row.label}
                </text>
                <rect x={fromPx} y={topPx} width={widePx} height={barPx} rx="2" class="fall-bar" />
                {(row.tone === 'open' || row.tone === 'over') && (
                  <rect x={fromPx} y={topPx} width={widePx} height={barPx} rx="2" fill={`url(#${hatch})`} />
                )}
                {row.kind === 'whole' && scale.isCut && (
                  <path d={`M${fromPx + 10} ${topPx - 2}l6 ${barPx / 2 + 2}l-6 ${barPx / 2 + 2}`} class="fall-cut" />
                )}
                {index < rows.length - 1 && (
                  <line x1={x(row.to)} x2={x(row.to)} y1={topPx + barPx} y2={topPx + rowPx} class="fall-thread" />
                )}
                <text x={widthPx} y={topPx + barPx / 2} class="fall-figure">
                  {row.text}
                </text>
              </g>
            )
          })}
        </svg>
      )}
      {scale.isCut && <figcaption class="fall-note">{cutText(scale.base)}</figcaption>}
    </figure>
  )
}
