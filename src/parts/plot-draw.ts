import uPlot from 'uplot'
import type { Inks } from './plot-inks'
import { drawOver, drawUnder } from './plot-layers'
import type { PlotPicture } from './plot-picture'
import { numberTicks, rangeRound, timeTicks } from './plot-ticks'

const pxPerTickX = 92
const pxPerTickY = 56

/** The lines of a picture as the columns that uPlot draws: low and high end of the band, curve, ahead. */
export function dataOf({ curve = [], ahead = [], band = [] }: PlotPicture): uPlot.AlignedData {
  const column = (rows: readonly { readonly x: number }[], values: readonly number[]): uPlot.AlignedData => [
    rows.map(({ x }) => x),
    [...values],
  ]
  const tables = [
    column(
      band,
      band.map(({ low }) => low),
    ),
    column(
      band,
      band.map(({ high }) => high),
    ),
    column(
      curve,
      curve.map(({ y }) => y),
    ),
    column(
      ahead,
      ahead.map(({ y }) => y),
    ),
  ]
  return uPlot.join(tables)
}

/** Picture and colours are asked for at each drawing: they change under a plot that stays. */
export function optionsOf(
  size: { readonly width: number; readonly height: number },
  picture: () => PlotPicture,
  inks: () => Inks,
): uPlot.Options {
  const font = (weight: number) => `${weight} 17px ${inks().font}`
  const axis = (which: 'x' | 'y', pxPerTick: number): uPlot.Axis => ({
    scale: which,
    stroke: () => inks().quiet,
    font: font(400),
    size: (_, values) => (which === 'y' ? widthOf(values) : picture().x.ticks === 'number' ? 66 : 40),
    grid: { show: which === 'y', stroke: () => inks().rule, width: 1 },
    ticks: { show: which === 'x', stroke: () => inks().quiet, width: 1, size: 6 },
    border: { show: which === 'x', stroke: () => inks().quiet, width: 2 },
    splits: (plot, _index, min, max) => {
      const px = (which === 'x' ? plot.bbox.width : plot.bbox.height) / devicePixelRatio
      const most = Math.max(2, Math.floor(px / pxPerTick))
      return [...(picture()[which].ticks === 'time' ? timeTicks : numberTicks)(min, max, most)]
    },
    values: (_, splits) => splits.map((value) => picture()[which].format(value)),
  })
  const line = (dash?: number[]): uPlot.Series => ({
    stroke: () => inks().rim,
    width: 4,
    pxAlign: false,
    points: { show: false },
    ...(dash === undefined ? {} : { dash }),
  })
  const unseen: uPlot.Series = { stroke: 'transparent', width: 0, pxAlign: false, points: { show: false } }
  return {
    ...size,
    scales: {
      x: { time: false, range: () => [...rangesOf(picture()).x] as uPlot.Range.MinMax },
      y: { range: () => [...rangesOf(picture()).y] as uPlot.Range.MinMax },
    },
    axes: [axis('x', pxPerTickX), axis('y', pxPerTickY)],
    series: [{}, unseen, unseen, line(), line([5, 9])],
    bands: [{ series: [2, 1], fill: () => inks().band }],
    padding: [34, 18, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    hooks: {
      drawAxes: [(plot) => drawUnder(plot, picture(), inks())],
      draw: [(plot) => drawOver(plot, picture(), inks())],
    },
  }
}

/** Room for the longest figure, 10 px a sign; as much as four signs at least. */
const widthOf = (values: readonly string[] | null): number =>
  Math.max(52, 12 + 10 * Math.max(0, ...(values ?? []).map((value) => value.length)))

/** What must be in sight: all that is drawn, and a little air. */
export function rangesOf(picture: PlotPicture): Record<'x' | 'y', readonly [number, number]> {
  const { points, curve = [], ahead = [], band = [], zone, reach, step, marks = [] } = picture
  const lines = [...points, ...curve, ...ahead]
  const edges = [zone?.from, zone?.to, reach?.y].filter((edge) => edge !== undefined)
  const [low, high] = rangeRound([...lines.map(({ y }) => y), ...band.flatMap((at) => [at.low, at.high]), ...edges])
  // A zone that is open at one end gets room to be seen, and to hold its words.
  const room = (high - low) * 0.3
  // The arrow of an addition stands under everything else.
  const foot = step === undefined ? 0 : 1.4 * room
  return {
    x: rangeRound(
      [...lines, ...band, ...marks]
        .map(({ x }) => x)
        .concat(reach ? [reach.from, reach.to] : [], step ? [step.from.x, step.toX * 1.42] : []),
      0.04,
    ),
    y: [
      zone?.to !== undefined && zone.from === undefined ? Math.min(low, zone.to - room) : low - foot,
      zone?.from !== undefined && zone.to === undefined ? Math.max(high, zone.from + room) : high,
    ],
  }
}
