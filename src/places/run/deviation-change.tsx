import './deviation-change.css'
import { useFormat } from '../../app/format'
import type { FinishedRow } from '../../batch/deviation'
import type { DeviationPanel, Way } from './deviation-model'
import { limitWords, roomWords } from './deviation-words'
import { useRun } from './run-context'
import { bare } from './way-words'

/** Before → after → limit of what the chosen way changes or leaves outside; with a second way beside it to compare. */
export function Change({ panel }: { panel: DeviationPanel }) {
  const run = useRun()
  const format = useFormat()
  const { chosen, compared } = panel
  const offer = chosen?.offer
  if (chosen === null || offer === undefined) return null
  const { state } = run.handle.view.value
  const beforeUg = panel.consequences?.finishedUg ?? state.totalUg
  const other = compared?.offer
  const rows = [...offer.rows, ...(other?.rows ?? []).filter((row) => !has(offer.rows, row.line))].slice(0, 3)
  const after = (own: readonly FinishedRow[], row: FinishedRow) => own.find(({ line }) => line === row.line)
  return (
    <div class="change-place">
      <table class={other ? 'change change-two' : 'change'}>
        <caption>{captionOf(panel)}</caption>
        <tbody>
          {rows.map((row) => (
            <tr key={row.line}>
              <th scope="row">{row.name}</th>
              <td class={after(offer.rows, row)?.breaks ? 'change-breaks' : undefined}>
                {bare(row.before, format)} → <b>{percentOf(after(offer.rows, row), format)}</b>
              </td>
              {other && (
                <td class={after(other.rows, row)?.breaks ? 'change-breaks' : undefined}>
                  → <b>{percentOf(after(other.rows, row), format)}</b>
                </td>
              )}
              <td class="change-limit">{row.from === 'none' ? 'no limit stated' : limitWords(row, format)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">Batch</th>
            <td>
              {format.mass(beforeUg)} → <b>{format.massWithUnit(offer.endsUg)}</b>
            </td>
            {other && (
              <td>
                → <b>{format.massWithUnit(other.endsUg)}</b>
              </td>
            )}
            <td class="change-limit">{roomWords(state, panel, format)}</td>
          </tr>
        </tbody>
      </table>
      <Compare panel={panel} />
    </div>
  )
}

/** A tap puts another way beside the chosen one; a second tap takes it away. */
function Compare({ panel }: { panel: DeviationPanel }) {
  const run = useRun()
  const { ways, chosen, compared } = panel
  const others = ways.filter((way) => way.feasible && way !== chosen && way.offer !== undefined)
  if (others.length === 0) return null
  return (
    <fieldset class="change-others">
      <legend>Compare with</legend>
      {others.map((way) => (
        <button
          key={way.kind}
          type="button"
          class="change-other"
          aria-label={`Compare with choice ${numberOf(panel, way)}`}
          aria-pressed={way === compared}
          onClick={() => run.type('compare', way === compared ? '' : way.kind)}
        >
          {numberOf(panel, way)}
        </button>
      ))}
    </fieldset>
  )
}

function captionOf(panel: DeviationPanel): string {
  const { chosen, compared } = panel
  const first = chosen === null ? '' : `With choice ${numberOf(panel, chosen)}`
  return compared === null ? first : `${first}, then with choice ${numberOf(panel, compared)}`
}

const numberOf = ({ ways }: DeviationPanel, way: Way): number => ways.indexOf(way) + 1

const has = (rows: readonly FinishedRow[], line: string): boolean => rows.some((row) => row.line === line)

/** A line that a way neither changes nor leaves outside ends well inside its limits. */
const percentOf = (row: FinishedRow | undefined, format: Parameters<typeof bare>[1]): string =>
  row === undefined ? 'inside' : format.percent(row.after)
