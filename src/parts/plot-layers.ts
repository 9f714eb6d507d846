import uPlot from 'uplot'
import { type Area, line, write } from './plot-area'
import type { Inks } from './plot-inks'
import type { PlotPicture } from './plot-picture'
import { drawStep } from './plot-step'

/** Under the lines: what is aimed at, and the names of the axes. */
export function drawUnder(plot: uPlot, { zone, x, y }: PlotPicture, inks: Inks): void {
  onArea(plot, (area) => {
    const { context, left, right, top, bottom } = area
    if (zone !== undefined) {
      const upper = zone.to === undefined ? top : Math.max(top, area.yOf(zone.to))
      const lower = zone.from === undefined ? bottom : Math.min(bottom, area.yOf(zone.from))
      context.fillStyle = inks.withinWash
      context.fillRect(left, upper, right - left, lower - upper)
      context.strokeStyle = inks.within
      context.lineWidth = 3
      if (zone.to !== undefined) line(context, [left, upper], [right, upper])
      if (zone.from !== undefined) line(context, [left, lower], [right, lower])
      write(area, inks, zone.text ?? '', left + 14, middleOr(upper + 24, (upper + lower) / 2), inks.within, 700)
    }
    if (x.ticks === 'number') write(area, inks, x.label, right, bottom + 48, inks.quiet, 400, 'right')
    write(area, inks, y.label, left - 8, top - 18, inks.quiet, 400, 'right')
  })
}

/** Over the lines: marks, points with their figures, and from when to when the value will be reached. */
export function drawOver(plot: uPlot, picture: PlotPicture, inks: Inks): void {
  onArea(plot, (area) => {
    for (const mark of picture.marks ?? []) drawMark(area, inks, mark)
    drawPoints(area, inks, picture)
    if (picture.reach !== undefined) drawReach(area, inks, picture.reach, picture.zone)
    if (picture.step !== undefined) drawStep(area, inks, picture.step)
  })
}

function drawMark(area: Area, inks: Inks, { x, text }: { readonly x: number; readonly text: string }): void {
  const { context, top, bottom } = area
  const at = area.xOf(x)
  context.strokeStyle = inks.edge
  context.lineWidth = 2
  context.setLineDash([3, 5])
  line(context, [at, top], [at, bottom])
  context.setLineDash([])
  write(area, inks, text, at + 6, top + 12, inks.quiet, 400)
}

/** A figure is left out where it would stand on the one before; the strong one is always written. */
function drawPoints(area: Area, inks: Inks, { points, y }: PlotPicture): void {
  const { context, left, right } = area
  // Beside the curve, not on it: a rising one leaves room on its left.
  const rises = (points.at(-1)?.y ?? 0) > (points[0]?.y ?? 0)
  let free: readonly [number, number] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  const strong = points.findLast((point) => point.strong)
  for (const point of points) {
    const [px, py] = [area.xOf(point.x), area.yOf(point.y)]
    context.fillStyle = inks.ink
    context.beginPath()
    context.arc(px, py, 8, 0, 2 * Math.PI)
    context.fill()
    const far = Math.hypot(px - free[0], py - free[1]) > 34
    const nearStrong =
      strong !== undefined && point !== strong && Math.hypot(px - area.xOf(strong.x), py - area.yOf(strong.y)) < 40
    if (point !== strong && (!far || nearStrong)) continue
    free = [px, py]
    const text = point.text ?? y.format(point.y)
    const size = point.strong ? 20 : 17
    const widthPx = 14 + text.length * size * 0.56
    const onRight = rises ? px - widthPx < left : px + widthPx < right
    write(
      area,
      inks,
      text,
      onRight ? px + 14 : px - 14,
      py - 16,
      inks.ink,
      point.strong ? 700 : 600,
      onRight ? 'left' : 'right',
      size,
    )
  }
}

/** The words stand on the side of what is aimed at, where no reading is yet. */
function drawReach(area: Area, inks: Inks, reach: NonNullable<PlotPicture['reach']>, zone: PlotPicture['zone']): void {
  const { context, left, right, top, bottom } = area
  const at = area.yOf(reach.y)
  const from = Math.max(left, area.xOf(reach.from))
  const to = Math.min(right, Math.max(area.xOf(reach.to), from + 14))
  context.setLineDash([])
  context.beginPath()
  context.roundRect(from, at - 7, to - from, 14, 7)
  context.fillStyle = inks.card
  context.strokeStyle = inks.rim
  context.lineWidth = 4
  context.fill()
  context.stroke()
  const under = zone?.to !== undefined
  const foot = under ? Math.min(bottom - 16, at + 66) : Math.max(top + 16, at - 66)
  const middle = (from + to) / 2
  context.lineWidth = 2
  line(context, [middle, under ? at + 10 : at - 10], [middle, under ? foot - 14 : foot + 14])
  const half = reach.text.length * 5.4
  const x = Math.min(right - half, Math.max(left + half, middle))
  write(area, inks, reach.text, x, foot, inks.rim, 700, 'center', 20)
}

function onArea(plot: uPlot, draw: (area: Area) => void): void {
  const { ctx: context, bbox } = plot
  const ratio = uPlot.pxRatio
  context.save()
  context.scale(ratio, ratio)
  draw({
    context,
    left: bbox.left / ratio,
    top: bbox.top / ratio,
    right: (bbox.left + bbox.width) / ratio,
    bottom: (bbox.top + bbox.height) / ratio,
    xOf: (value) => plot.valToPos(value, 'x', true) / ratio,
    yOf: (value) => plot.valToPos(value, 'y', true) / ratio,
  })
  context.restore()
}

const middleOr = (wanted: number, middle: number): number => Math.min(wanted, Math.max(middle, wanted - 24))
