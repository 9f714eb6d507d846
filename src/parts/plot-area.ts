import type { Inks } from './plot-inks'

/** The plotting area in CSS px, and where values stand in it. */
export interface Area {
  readonly context: CanvasRenderingContext2D
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly xOf: (value: number) => number
  readonly yOf: (value: number) => number
}

export function line(
  context: CanvasRenderingContext2D,
  from: readonly [number, number],
  to: readonly [number, number],
): void {
  context.beginPath()
  context.moveTo(...from)
  context.lineTo(...to)
  context.stroke()
}

export function write(
  { context }: Area,
  inks: Inks,
  text: string,
  x: number,
  y: number,
  colour: string,
  weight: number,
  align: CanvasTextAlign = 'left',
  sizePx = 17,
): void {
  context.font = `${weight} ${sizePx}px ${inks.font}`
  context.fillStyle = colour
  context.textAlign = align
  context.textBaseline = 'middle'
  context.fillText(text, x, y)
}

/** How wide a text comes out, in CSS px. */
export function widthOf({ context }: Area, inks: Inks, text: string, weight: number, sizePx = 17): number {
  context.font = `${weight} ${sizePx}px ${inks.font}`
  return context.measureText(text).width
}
