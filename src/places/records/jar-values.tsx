import { useFormat } from '../../app/format'
import type { Measured } from '../../batch/how-read'
import { type StandardReading, unlike } from '../../batch/read-unlike'
import type { Stability } from '../../batch/stability'
import { jarName, type Measure } from '../../batch/stability-plan'
import { jarReadWords } from './jar-read-words'
import { shownFigure } from './stability-words'

/** All results as a table: a row a jar, a column a measure. */
export function JarValues({ stability }: { stability: Stability }) {
  const format = useFormat()
  const { plan, standards } = stability
  const { measures } = plan
  const read = stability.pulls.filter(({ readings }) => readings.length > 0)
  if (read.length === 0) return null
  return (
    <section aria-labelledby="values" class="stability-values">
      <h2 id="values">Results</h2>
      <div class="stability-scroll">
        <table class="paper-table">
          <thead>
            <tr>
              <th scope="col">Jar</th>
              <th scope="col">Read</th>
              {measures.map(({ id, label }) => (
                <th key={id} scope="col">
                  {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {read.map((pull) => (
              <tr key={pull.id}>
                <th scope="row">{jarName(pull.condition, pull.at)}</th>
                <td>
                  {format.date(pull.readings[0]?.atMs ?? pull.dueAtMs)}
                  {pull.lateDays > 0 && `, ${pull.lateDays} d late`}
                </td>
                {measures.map((measure) => (
                  <td key={measure.id}>
                    {pull.readings
                      .filter((reading) => reading.measure === measure)
                      .map(({ entry, body }) => (
                        <Value key={entry} body={body} measure={measure} standard={standards.get(measure.id)} />
                      ))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  )
}

interface ValueProps {
  body: Measured
  measure: Measure
  standard: StandardReading | undefined
}

/** One reading, and under it how it was taken. */
function Value({ body, measure, standard = {} }: ValueProps) {
  const format = useFormat()
  const how = jarReadWords(body, unlike(standard, body), format)
  return (
    <p>
      {body.value === undefined
        ? [body.text, body.good === false ? 'not as it should be' : ''].filter(Boolean).join(', ')
        : `${shownFigure(body.value, measure, format)}${outside(body.value, measure)}`}
      {how !== '' && <span class="paper-small paper-under">{how}</span>}
    </p>
  )
}

function outside(value: number, { limits }: Measure): string {
  if (limits?.min !== undefined && value < limits.min) return ' (under)'
  return limits?.max !== undefined && value > limits.max ? ' (over)' : ''
}
