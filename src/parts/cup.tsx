import './cup.css'
import { useId } from 'preact/hooks'
import { type CupContents, cupLevels, cupShape } from './cup-geometry.ts'

interface CupProps extends CupContents {
  /** What a person who cannot see the cup is told; without it the cup is decoration. */
  label?: string | undefined
  width: number
  height: number
}

/** A vessel as an enamel cup: strata by phase, what is being weighed in solid cobalt, the target a dashed line. */
export const Cup = (props: CupProps) => {
  const { width, height, label } = props
  const id = useId()
  const shape = cupShape(width, height)
  const { leftPx, rightPx, topPx, heightPx, middlePx } = shape.inside
  const levels = cupLevels(props, heightPx)
  const across = { x: leftPx, width: rightPx - leftPx }
  const letterPx = height > 130 ? 24 : 18
  const line = (yPx: number, name: string) => (
    <line x1={leftPx + 3} x2={rightPx - 3} y1={topPx + yPx} y2={topPx + yPx} class={name} />
  )
  return (
    <svg
      class={height > 130 ? 'cup cup-large' : 'cup'}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role={label === undefined ? undefined : 'img'}
      aria-label={label}
      aria-hidden={label === undefined ? true : undefined}
    >
      <defs>
        <clipPath id={`${id}in`}>
          <path d={`${shape.wall}Z`} />
        </clipPath>
        <pattern id={`${id}hatched`} width="10" height="10" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="10" height="10" class="cup-hatched" />
          <path d="M5 0V10" class="cup-hatch" />
        </pattern>
        <pattern id={`${id}dotted`} width="10" height="10" patternUnits="userSpaceOnUse">
          <rect width="10" height="10" class="cup-dotted" />
          <circle cx="3" cy="3" r="1.7" class="cup-dot" />
          <circle cx="8" cy="8" r="1.7" class="cup-dot" />
        </pattern>
      </defs>
      {shape.handles.map((path) => (
        <path key={path} d={path} class="cup-handle" />
      ))}
      <path d={`${shape.wall}Z`} class="cup-inside" />
      <g clip-path={`url(#${id}in)`}>
        {levels.bands.map((band) => (
          <rect
            key={band.letter + band.topPx}
            {...across}
            y={topPx + band.topPx}
            height={band.heightPx}
            class={`cup-band cup-${band.pattern}`}
            fill={band.pattern === 'plain' ? undefined : `url(#${id}${band.pattern})`}
          />
        ))}
        {levels.live && (
          <rect {...across} y={topPx + levels.live.topPx} height={levels.live.heightPx} class="cup-band cup-live" />
        )}
      </g>
      {levels.surfacePx !== undefined && line(levels.surfacePx, 'cup-surface')}
      {levels.capacityPx !== undefined && line(levels.capacityPx, 'cup-capacity')}
      {levels.targetPx !== undefined && line(levels.targetPx, 'cup-target')}
      <path d={shape.wall} class="cup-wall" />
      <rect width={shape.rim.widthPx} height={shape.rim.heightPx} rx={shape.rim.heightPx / 2} class="cup-rim" />
      {levels.bands
        .filter((band) => band.heightPx > letterPx * 1.15)
        .map((band) => (
          <text
            key={band.letter + band.topPx}
            x={middlePx}
            y={topPx + band.topPx + band.heightPx / 2 + letterPx * 0.36}
            font-size={letterPx}
          >
            {band.letter}
          </text>
        ))}
    </svg>
  )
}
