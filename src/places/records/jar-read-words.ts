import type { Format } from '../../app/format'
import type { Measured } from '../../batch/how-read'
import { type StandardReading, unlikeWords } from '../../batch/read-unlike'
import { howWords } from '../../batch/result-words'
import { figure } from './figure'

/** How a jar was read, for a line under its figure: readings, spindle, speed, torque, temperature, and what was asked for instead. */
export function jarReadWords({ how = {}, ...body }: Measured, otherwise: StandardReading, format: Format): string {
  // The ends of a scale are the same for every jar: they would fill the table.
  const { scale: _scale, ...read } = how
  const say = { mass: format.massWithUnit, number: (value: number) => figure(value, format) }
  return [
    ...howWords({ ...body, how: read }, say),
    body.sampleC === undefined ? '' : `${say.number(body.sampleC)} °C`,
    unlikeWords(otherwise, say),
  ]
    .filter((part) => part !== '')
    .join(', ')
}
