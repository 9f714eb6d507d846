import { useFormat } from '../../app/format'
import type { Stability } from '../../batch/stability'
import { jarName, type Measure } from '../../batch/stability-plan'
import { shownFigure } from './stability-words'

/** All results as a table: a row a jar, a column a measure. */
export function JarValues({ stability }: { stability: Stability }) {
  const format = useFormat()
  const { measures } = stability.plan
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
                      .map(({ body }) => said(body, measure))
                      .join('; ')}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  )

  function said(body: { value?: number; text?: string; good?: boolean }, measure: Measure): string {
    if (body.value !== undefined) return `${shownFigure(body.value, measure, format)}${outside(body.value, measure)}`
    return [body.text, body.good === false ? 'not as it should be' : ''].filter(Boolean).join(', ')
  }
}

function outside(value: number, { limits }: Measure): string {
  if (limits?.min !== undefined && value < limits.min) return ' (under)'
  return limits?.max !== undefined && value > limits.max ? ' (over)' : ''
}
