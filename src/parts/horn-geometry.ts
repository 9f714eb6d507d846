import { widthEm } from './text-width.ts'

interface HornMasses {
  readonly netUg: number
  readonly targetUg: number
  /** The band, already rounded inward to what the balance can show. */
  readonly lowUg: number
  readonly highUg: number
}

/** From micrograms to a distance from the left end. Strictly rising below the target and above it. */
type HornScale = (massUg: number) => number

/** The height at the empty end, as a part of the height at the band. */
export const thinEnd = 0.24

/**
 * The approach scale. With tol half the band and L = ln(1 + T/tol): the target stands at .80 W; below it
 * x = x(T)·(1 − ln(1 + left/tol)/L), above it the mirror image. So the last 5 % take 39 % of the way to the
 * target at ±1 %, 57 % at ±0.1 %.
 * A wide band would push its upper gate off the right end: then the target moves left until the gate stands at .95 W.
 */
export const hornScale = (masses: HornMasses, widthPx: number): HornScale => {
  const { lowUg, highUg } = masses
  const targetUg = Math.max(masses.targetUg, 1)
  const tolUg = Math.max((highUg - lowUg) / 2, 1)
  const whole = Math.log1p(targetUg / tolUg)
  const part = (distanceUg: number) => Math.log1p(Math.max(distanceUg, 0) / tolUg) / whole
  const targetPx = widthPx * Math.min(0.8, 0.95 / (1 + part(highUg - targetUg)))
  return (massUg) =>
    massUg <= targetUg
      ? targetPx * (1 - part(targetUg - Math.max(massUg, 0)))
      : targetPx * (1 + part(massUg - targetUg))
}

/** The height of the horn at x: from its thin end, by a parabola, to full height at the lower gate. */
export const hornHeight = (xPx: number, lowPx: number, heightPx: number): number => {
  const along = lowPx <= 0 ? 1 : Math.min(Math.max(xPx / lowPx, 0), 1)
  return heightPx * (thinEnd + (1 - thinEnd) * along * along)
}

/** The outline from the left end to x as an SVG path, the middle line being y = 0. */
export const hornPath = (toPx: number, lowPx: number, heightPx: number, cornerPx: number): string => {
  const thin = (heightPx * thinEnd) / 2
  const start = Math.min(thin, toPx)
  const bend = Math.min(toPx, lowPx)
  const half = hornHeight(bend, lowPx, heightPx) / 2
  const corner = Math.min(cornerPx, Math.max(toPx - lowPx, 0))
  const n = (value: number) => Math.round(value * 100) / 100
  // A part of a parabola that starts level is the quadratic curve whose middle point lies half-way, at the start's height.
  const curve = bend > start
  return [
    `M${n(start)} ${n(-thin)}`,
    curve ? `Q${n((start + bend) / 2)} ${n(-thin)} ${n(bend)} ${n(-half)}` : '',
    `H${n(toPx - corner)}`,
    corner > 0
      ? `a${corner} ${corner} 0 0 1 ${corner} ${corner}V${n(half - corner)}a${corner} ${corner} 0 0 1 ${-corner} ${corner}`
      : `V${n(half)}`,
    `H${n(bend)}`,
    curve ? `Q${n((start + bend) / 2)} ${n(thin)} ${n(start)} ${n(thin)}` : '',
    `A${n(start)} ${n(thin)} 0 0 1 ${n(start)} ${n(-thin)}Z`,
  ].join('')
}

interface HornLabel {
  readonly text: string
  /** Where the tick stands. */
  readonly tickPx: number
  /** The middle of the words; moved aside from the tick where two would touch. */
  readonly middlePx: number
  readonly kind: 'end' | 'tick' | 'gate'
}

/**
 * Labels under the horn that never touch: both gates always, pushed apart if they must be; then nought; then 90 % and
 * 95 % of the target, each only where there is room.
 */
export const hornLabels = (
  masses: HornMasses,
  widthPx: number,
  fontPx: number,
  format: (massUg: number) => string,
): HornLabel[] => {
  const scale = hornScale(masses, widthPx)
  const gapPx = fontPx * 0.6
  const wide = (text: string) => widthEm(text) * fontPx
  const lowText = format(masses.lowUg)
  const highText = format(masses.highUg)
  const lowPx = scale(masses.lowUg)
  const highPx = scale(masses.highUg)
  const needPx = (wide(lowText) + wide(highText)) / 2 + gapPx
  const asidePx = Math.max(needPx - (highPx - lowPx), 0) / 2
  // The upper words may not leave the picture on the right; the lower ones then give way.
  const highMiddlePx = Math.min(highPx + asidePx, widthPx - wide(highText) / 2)
  const lowMiddlePx = Math.min(lowPx - asidePx, highMiddlePx - needPx)
  const gates: HornLabel[] = [
    { text: lowText, tickPx: lowPx, middlePx: lowMiddlePx, kind: 'gate' },
    { text: highText, tickPx: highPx, middlePx: highMiddlePx, kind: 'gate' },
  ]
  const zero = format(0)
  const others: HornLabel[] = [
    { text: zero, tickPx: 0, middlePx: wide(zero) / 2, kind: 'end' },
    ...[0.9, 0.95].map((part): HornLabel => {
      const massUg = Math.round(masses.targetUg * part)
      return { text: format(massUg), tickPx: scale(massUg), middlePx: scale(massUg), kind: 'tick' }
    }),
  ]
  const placed = [...gates]
  for (const label of others) {
    const free = placed.every(
      (other) => Math.abs(other.middlePx - label.middlePx) >= (wide(other.text) + wide(label.text)) / 2 + gapPx,
    )
    const before = label.kind === 'end' || label.tickPx < lowPx
    if (free && before && label.middlePx - wide(label.text) / 2 >= 0) placed.push(label)
  }
  return placed.sort((a, b) => a.tickPx - b.tickPx)
}
