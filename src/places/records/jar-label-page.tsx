import { useMemo } from 'preact/hooks'
import { qrPath } from '../../parts/qr-path'
import { type JarSheet, pageMm } from './jar-sheets'

/** What stands on one label: the address behind its code, and lines of text, the first one bold. */
export interface JarLabel {
  readonly id: string
  readonly address: string
  readonly lines: readonly string[]
}

interface Placed extends JarLabel {
  readonly leftMm: number
  readonly topMm: number
}

/** Clear of the edge, where a printer may be off by as much. */
const edgeMm = 1.5
/** A larger code reads no better. */
const largestCodeMm = 24
const largestTextMm = 3.4
/** Mean width of a sign, of its height. */
const signWidth = 0.54

/** One page of labels, drawn in millimetres. */
export function JarLabelPage({ sheet, labels }: { sheet: JarSheet; labels: readonly Placed[] }) {
  const [width, height] = pageMm[sheet.page]
  return (
    <svg
      class={`jar-label-page jar-label-${sheet.page.toLowerCase()}`}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`A sheet with ${labels.length} labels: ${labels.map(({ lines }) => lines.slice(2, 4).join(', ')).join('; ')}`}
    >
      <rect class="jar-label-paper" width={width} height={height} />
      {labels.map((label) => (
        <Label key={label.id} label={label} sheet={sheet} />
      ))}
    </svg>
  )
}

/** White around the code; the label about it is white for as much again. */
export const quietModules = 2

/** How wide the code is on a label of the sheet. */
export const codeMmOn = ({ heightMm }: JarSheet): number => Math.min(largestCodeMm, heightMm - 2 * edgeMm)

function Label({ label, sheet }: { label: Placed; sheet: JarSheet }) {
  const { address, lines, leftMm, topMm } = label
  const { widthMm, heightMm } = sheet
  const { d, size } = useMemo(() => qrPath(address, quietModules), [address])
  const codeMm = codeMmOn(sheet)
  const lineMm = (heightMm - 2 * edgeMm) / lines.length
  const textMm = Math.min(largestTextMm, lineMm * 0.8)
  const roomMm = widthMm - codeMm - 3 * edgeMm
  return (
    <g transform={`translate(${leftMm} ${topMm})`} data-address={address}>
      <rect class="jar-label-edge" width={widthMm} height={heightMm} />
      <path
        class="jar-label-code"
        d={d}
        shape-rendering="crispEdges"
        transform={`translate(${edgeMm} ${(heightMm - codeMm) / 2}) scale(${codeMm / size})`}
      />
      {lines.map((line, index) => (
        <text
          key={index}
          class={index === 0 ? 'jar-label-strong' : undefined}
          x={codeMm + 2 * edgeMm}
          y={edgeMm + lineMm * (index + 0.75)}
          font-size={textMm}
          {...(line.length * textMm * signWidth > roomMm
            ? { textLength: roomMm, lengthAdjust: 'spacingAndGlyphs' }
            : {})}
        >
          {line}
        </text>
      ))}
    </g>
  )
}
