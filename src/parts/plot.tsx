import 'uplot/dist/uPlot.min.css'
import './plot.css'
import { useEffect, useMemo, useRef } from 'preact/hooks'
import uPlot from 'uplot'
import { dataOf, optionsOf } from './plot-draw'
import { readInks, watchInks } from './plot-inks'
import type { PlotPicture } from './plot-picture'

interface PlotProps extends PlotPicture {
  /** What the plot shows, in one sentence: its text alternative. */
  label: string
  /** As high as its box where none is given. */
  heightPx?: number | undefined
}

/**
 * Readings, a curve through them, how sure it is and what is aimed at. It draws in the tokens' colours, follows theme and
 * width, and gives its points as a table to those who do not see it.
 */
export function Plot(props: PlotProps) {
  const { label, heightPx, points, x, y } = props
  const host = useRef<HTMLDivElement>(null)
  const shown = useRef<PlotPicture>(props)
  const plot = useRef<uPlot | null>(null)
  shown.current = props

  useEffect(() => {
    const element = host.current
    if (element === null) return
    const inks = { now: readInks(element) }
    const size = () => ({ width: element.clientWidth, height: heightPx ?? element.clientHeight })
    const drawn = new uPlot(
      optionsOf(
        size(),
        () => shown.current,
        () => inks.now,
      ),
      dataOf(shown.current),
      element,
    )
    plot.current = drawn
    const resize = new ResizeObserver(() => drawn.setSize(size()))
    resize.observe(element)
    const unwatch = watchInks(() => {
      inks.now = readInks(element)
      drawn.redraw(true, true)
    })
    return () => {
      unwatch()
      resize.disconnect()
      drawn.destroy()
      plot.current = null
    }
  }, [heightPx])

  const data = useMemo(() => dataOf(props), [points, props.curve, props.ahead, props.band])
  useEffect(
    () => plot.current?.setData(data),
    [data, props.zone?.from, props.zone?.to, props.reach?.from, props.reach?.to, props.step?.toX, props.step?.y],
  )

  return (
    <figure class="plot">
      <div
        ref={host}
        class="plot-canvas"
        role="img"
        aria-label={label}
        style={heightPx === undefined ? {} : { '--plot-height': `${heightPx}px` }}
      />
      <table class="visually-hidden">
        <caption>{label}</caption>
        <thead>
          <tr>
            <th scope="col">{x.label}</th>
            <th scope="col">{y.label}</th>
          </tr>
        </thead>
        <tbody>
          {points.map((point, index) => (
            <tr key={index}>
              <td>{x.format(point.x)}</td>
              <td>{point.text ?? y.format(point.y)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  )
}
