import { type Area, line, widthOf, write } from './plot-area'
import type { Inks } from './plot-inks'
import type { PlotPicture } from './plot-picture'

/** An addition as an arrow along the axis, from the last point to the ring that it should lead to. */
export function drawStep(area: Area, inks: Inks, step: NonNullable<PlotPicture['step']>): void {
  const { context, left, right, bottom } = area
  const [from, to] = [area.xOf(step.from.x), area.xOf(step.toX)]
  const foot = bottom - 16
  context.strokeStyle = inks.rim
  context.lineWidth = 2
  context.setLineDash([3, 5])
  line(context, [from, area.yOf(step.from.y) + 10], [from, foot])
  if (step.y !== undefined) line(context, [to, area.yOf(step.y) + 12], [to, foot])
  context.setLineDash([])
  drawArrow(area, inks, from, to, foot)
  const wide = widthOf(area, inks, step.text, 700, 20)
  if (from - left > wide + 14) write(area, inks, step.text, from - 12, foot, inks.rim, 700, 'right', 20)
  else if (right - to > wide + 12) write(area, inks, step.text, to + 12, foot, inks.rim, 700, 'left', 20)
  else
    write(area, inks, step.text, Math.max(left, Math.min(from + 8, right - wide)), foot - 22, inks.rim, 700, 'left', 20)
  if (step.y === undefined) return
  const at = area.yOf(step.y)
  context.beginPath()
  context.arc(to, at, 10, 0, 2 * Math.PI)
  context.fillStyle = inks.card
  context.strokeStyle = inks.rim
  context.lineWidth = 5
  context.fill()
  context.stroke()
  const note = right - left > 360 ? (step.note ?? '') : ''
  const longest = Math.max(widthOf(area, inks, step.leadsTo ?? '', 700, 20), widthOf(area, inks, note, 600))
  const [x, align] = to + 22 + longest < right ? ([to + 22, 'left'] as const) : ([to - 22, 'right'] as const)
  write(area, inks, step.leadsTo ?? '', x, note === '' ? at : at - 6, inks.rim, 700, align, 20)
  write(area, inks, note, x, at + 16, inks.rim, 600, align)
}

function drawArrow({ context }: Area, inks: Inks, from: number, to: number, y: number): void {
  const head = Math.min(10, Math.abs(to - from))
  context.lineWidth = 4
  context.lineCap = 'round'
  context.strokeStyle = inks.rim
  line(context, [from, y], [to, y])
  line(context, [to - head, y - head * 0.8], [to, y])
  line(context, [to - head, y + head * 0.8], [to, y])
  context.lineCap = 'butt'
}
