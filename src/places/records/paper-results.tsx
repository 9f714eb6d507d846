import type { Format } from '../../app/format'
import type { Say } from '../../batch/entry-phrases'
import { basisWords } from '../../batch/entry-phrases'
import { unlikeWords } from '../../batch/read-unlike'
import type { ResultRow } from '../../batch/record-results'
import { howWords } from '../../batch/result-words'
import { jarReadWords } from './jar-read-words'
import { limitsWords } from './limits-words'
import { Verdict } from './paper-materials'
import type { PaperProps } from './paper-props'
import { shownValue } from './shown-value'

export function PaperResults({ record, format, say }: PaperProps) {
  const { inProcess, rested, missing } = record.results
  const day = rested[0] ? `, ${format.date(rested[0].atMs)}` : ''
  const waiting = missing.filter((check) => check.when === 'after-rest')
  return (
    <>
      {inProcess.length > 0 && (
        <section class="paper-section">
          <h2>In process</h2>
          <Results rows={inProcess} format={format} say={say} />
        </section>
      )}
      <section class="paper-section" id="results">
        <h2>Results, rested{day}</h2>
        {rested.length > 0 && <Results rows={rested} format={format} say={say} />}
        {waiting.length > 0 && (
          <p class="paper-quiet">Not read yet: {waiting.map((check) => check.label).join(', ')}.</p>
        )}
      </section>
    </>
  )
}

function Results({ rows, format, say }: { rows: readonly ResultRow[]; format: Format; say: Say }) {
  return (
    <table class="paper-table">
      <thead class="visually-hidden">
        <tr>
          <th scope="col">Property</th>
          <th scope="col">Result</th>
          <th scope="col">Verdict</th>
          <th scope="col">Limits</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.entry} id={`entry-${row.entry}`} class={row.struck ? 'paper-struck-row' : undefined}>
            <td>
              {row.label}
              <span class="paper-small">
                {' '}
                {[
                  basisWords(row.body.basis, say),
                  methodOf(row),
                  ...howWords(row.body, say),
                  row.body.sampleC === undefined ? '' : `${format.number(row.body.sampleC, 1)} °C`,
                  unlikeWords(row.unlike, say),
                  `${format.time(row.atMs)} ${row.by}`,
                  row.writtenAtMs === undefined ? '' : `entered ${format.dateTime(row.writtenAtMs)}`,
                  row.struck ? `struck ${row.struck.by}, ${row.struck.reason}` : '',
                ]
                  .filter((part) => part !== '')
                  .join(', ')}
              </span>
            </td>
            <td class="paper-number paper-strong">
              {row.struck ? <s>{shownValue(row, format)}</s> : shownValue(row, format)}
            </td>
            <td class="paper-mark">
              <Verdict verdict={row.struck ? 'none' : row.verdict} />
            </td>
            <td class={row.check?.limits ? 'paper-number paper-limits' : 'paper-number'}>
              {limitsWords(row.check, format)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** Kept jars: a row a pull, a column a property. */
export function PaperStability({ record, format }: PaperProps) {
  const rows = record.results.stability.filter((row) => !row.struck)
  if (rows.length === 0) return null
  const labels = [...new Set(rows.map((row) => row.label))]
  const pulls = [...new Set(rows.map((row) => row.body.conditions ?? ''))]
  return (
    <section class="paper-section">
      <h2>Kept jars</h2>
      <table class="paper-table">
        <thead>
          <tr>
            <th scope="col">Jar</th>
            <th scope="col">Read</th>
            {labels.map((label) => (
              <th key={label} scope="col" class="paper-number">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {pulls.map((pull) => {
            const own = rows.filter((row) => row.body.conditions === pull)
            const [first] = own
            return (
              <tr key={pull}>
                <td>{pull}</td>
                <td>{first && `${format.date(first.atMs)} ${first.by}`}</td>
                {labels.map((label) => {
                  const row = own.findLast((each) => each.label === label)
                  return (
                    <td key={label} class="paper-number">
                      {row && (
                        <span class={row.verdict === 'within' ? undefined : 'paper-outside'}>
                          {shownValue(row, format)} <Verdict verdict={row.verdict} />
                        </span>
                      )}
                      {row && row.body.value !== undefined && (
                        <span class="paper-small paper-under">{jarReadWords(row.body, row.unlike, format)}</span>
                      )}
                    </td>
                  )
                })}
              </tr>
            )
          })}
        </tbody>
      </table>
      <p class="paper-quiet">Jars at 40 °C age faster than on a shelf: what they show is an indication, not a date.</p>
    </section>
  )
}

/** How a number was read; a basis says it for a pH. */
function methodOf({ body, check }: ResultRow): string {
  if (body.value === undefined || body.basis !== undefined) return ''
  return body.text ?? check?.method ?? ''
}
