import { ago } from '../../../app/ago'
import type { Format } from '../../../app/format'
import type { BatchState } from '../../../batch/state'
import { nameOfVessel } from '../../../batch/vessel-name'
import type { ThermalAct } from './thermal-act'
import { hotWords, missedWords, setTooLowWords, whyWords } from './thermal-words'
import type { ThermalView } from './use-thermal'

/** What the number rests on: the last reading, how many there are, and what they were taken in. */
export function ThermalWhy({ run, format, how, typing, entries, view }: ThermalAct) {
  const { course, forecast } = view
  const { meantC, temperature } = entries
  if (meantC !== null && temperature.kind === 'number')
    return (
      <>
        <b>°F? </b>
        {format.number(temperature.value)} °F is {format.number(meantC)} °C.
      </>
    )
  const last = course?.readings.at(-1)
  if (last === undefined) return <>{how}Not read yet.</>
  return (
    <>
      <b>
        Last reading {format.number(last.temperatureC)} °C, {ago(run.app.nowMs.value - last.atMs)}.
      </b>{' '}
      {typing.is && how}
      {forecast?.outlook.kind === 'ask'
        ? `How warm is the ${forecast.outlook.what}? Typed once, it lets the time be told.`
        : forecast && whyWords(forecast, format)}
    </>
  )
}

/** What goes wrong as things stand, the hottest matter first. */
export function warningsOf(view: ThermalView, state: BatchState, format: Format): readonly string[] {
  const setTooLow = view.forecast ? setTooLowWords(view.forecast) : null
  return [
    ...(view.tooHot ? [hotWords(view.tooHot, format)] : []),
    ...view.missed.map((each) => missedWords(each, (vessel) => nameOfVessel(state, vessel), format)),
    ...(setTooLow === null ? [] : [setTooLow]),
  ]
}
