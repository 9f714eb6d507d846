import './horn.css'
import { useId } from 'preact/hooks'
import { hornHeight, hornLabels, hornPath, hornScale } from './horn-geometry.ts'
import { useWidth } from './use-width.ts'

interface HornProps {
  netUg: number
  targetUg: number
  lowUg: number
  highUg: number
  /** A mass as the balance shows it, without its unit. */
  format: (massUg: number) => string
  unit?: string | undefined
  state: 'to-go' | 'within' | 'over'
  /** How far the arrow of an over-weighing reaches beyond the right end: the card's padding and about 16 px. */
  bleedPx?: number | undefined
  /** The height at the band, 60 px unless said. */
  heightPx?: number | undefined
}

const fontPx = 18
const capPx = 14
const postPx = 9

/** The approach horn: how near a pour is to its band, so drawn that the last few per cent take a large part of it. */
export const Horn = (props: HornProps) => {
  const { netUg, targetUg, lowUg, highUg, format, unit = 'g', state, bleedPx = 40, heightPx = 60 } = props
  const { ref, widthPx } = useWidth<HTMLDivElement>('horn')
  const hatch = useId()
  const scale = hornScale(props, widthPx)
  const lowPx = scale(lowUg)
  const highPx = scale(highUg)
  const netPx = Math.min(scale(netUg), widthPx)
  const half = heightPx / 2
  const topPx = half + postPx + fontPx + 10
  const tallPx = topPx + half + postPx + fontPx + 8
  const tipPx = widthPx + bleedPx
  const bodyPx = state === 'over' ? highPx : netPx
  const says = `${format(netUg)} ${unit} of ${format(targetUg)} ${unit}, good from ${format(lowUg)} to ${format(highUg)}`
  const needleHalf = hornHeight(netPx, lowPx, heightPx) / 2 + 8
  return (
    <div class={`horn horn-${state}`} ref={ref} style={{ blockSize: `${tallPx}px` }}>
      {widthPx > 0 && (
        <svg role="img" aria-label={says} width={widthPx} height={tallPx} viewBox={`0 ${-topPx} ${widthPx} ${tallPx}`}>
          <defs>
            <pattern id={hatch} width="14" height="14" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <rect width="14" height="14" class="horn-over-ground" />
              <rect width="4" height="14" class="horn-over-stripe" />
            </pattern>
          </defs>
          <path d={hornPath(widthPx, lowPx, heightPx, capPx)} class="horn-well" />
          <rect x={lowPx} y={-half} width={highPx - lowPx} height={heightPx} class="horn-band" />
          {bodyPx > 0 && <path d={hornPath(bodyPx, lowPx, heightPx, 0)} class="horn-fill" />}
          {state === 'over' && (
            <path
              d={`M${highPx} ${-half}H${tipPx - 26}L${tipPx} 0L${tipPx - 26} ${half}H${highPx}Z`}
              fill={`url(#${hatch})`}
            />
          )}
          {state !== 'over' && netPx > 0 && (
            <line x1={netPx} x2={netPx} y1={-needleHalf} y2={needleHalf} class="horn-needle" />
          )}
          {[lowPx, highPx].map((x) => (
            <line key={x} x1={x} x2={x} y1={-half - 2} y2={half + 2} class="horn-halo" />
          ))}
          <path d={`M${lowPx} ${half + postPx}V${-half - postPx}H${highPx}V${half + postPx}`} class="horn-gate" />
          <text x={(lowPx + highPx) / 2} y={-half - postPx - 8} class="horn-word">
            {state === 'to-go' ? 'stop here' : 'good'}
          </text>
          {hornLabels(props, widthPx, fontPx, format).map(({ text, tickPx, middlePx, kind }) => (
            <g key={kind + text}>
              {kind === 'tick' && (
                <line
                  x1={tickPx}
                  x2={tickPx}
                  y1={hornHeight(tickPx, lowPx, heightPx) / 2}
                  y2={half + postPx - 2}
                  class="horn-tick"
                />
              )}
              <text x={middlePx} y={half + postPx + fontPx + 1} class={`horn-label horn-label-${kind}`}>
                {text}
              </text>
            </g>
          ))}
        </svg>
      )}
    </div>
  )
}
