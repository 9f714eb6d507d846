import './deviation-change.css'
import { useFormat } from '../../app/format'
import type { FinishedRow } from '../../batch/deviation'
import type { BatchState } from '../../batch/state'
import type { DeviationPanel, Way } from './deviation-model'
import { boundWords, costWords, type LimitWords, limitWords, roomWords } from './deviation-words'
import { bareOf, percentsOf } from './figures'
import { useRun } from './run-context'

/** Before → after → limit of what the chosen way changes or leaves outside; with a second way beside it to compare. */
export function Change({ panel }: { panel: DeviationPanel }) {
  if (panel.chosen?.offer === undefined) return null
  return (
    <div class="change-place">
      {panel.compared === null ? <OneWay panel={panel} /> : <TwoWays panel={panel} />}
      <Compare panel={panel} />
    </div>
  )
}

function OneWay({ panel }: { panel: DeviationPanel }) {
  const run = useRun()
  const format = useFormat()
  const offer = panel.chosen?.offer
  if (panel.chosen === null || offer === undefined) return null
  const { state } = run.handle.view.value
  const cost = costWords(offer, run.app.settings.value.value.currency, format)
  return (
    <table class="change">
      <caption>
        With choice {numberOf(panel, panel.chosen)}
        {cost !== null && offer.feasible && `: ${cost} of material still to add`}
      </caption>
      <tbody>
        {offer.rows.slice(0, 2).map((row) => (
          <RowChange key={row.line} row={row} />
        ))}
        <tr>
          <th scope="row">Batch</th>
          <td>
            {format.mass(leftUg(panel, state))} → <b>{format.massWithUnit(offer.endsUg)}</b>
          </td>
          <Limit words={roomWords(state, offer.endsUg, format)} />
        </tr>
      </tbody>
    </table>
  )
}

function RowChange({ row }: { row: FinishedRow }) {
  const format = useFormat()
  const percent = percentsOf(row, format)
  return (
    <tr>
      <th scope="row">{row.name}</th>
      <td class={row.breaks ? 'change-breaks' : undefined}>
        {bareOf(percent(row.before))} → <b>{percent(row.after)}</b>
      </td>
      <Limit words={limitWords(row, format)} />
    </tr>
  )
}

const Limit = ({ words }: { words: LimitWords | null }) => (
  <td class="change-limit">
    {words?.limit}
    {words?.spare && <span class="change-spare">, {words.spare}</span>}
  </td>
)

/** Left as it is, then each of the two ways, in % and g. */
function TwoWays({ panel }: { panel: DeviationPanel }) {
  const run = useRun()
  const format = useFormat()
  const { chosen, compared } = panel
  const [one, two] = [chosen?.offer, compared?.offer]
  if (chosen === null || compared === null || one === undefined || two === undefined) return null
  const rows = [...one.rows, ...two.rows.filter((row) => one.rows.every(({ line }) => line !== row.line))].slice(0, 2)
  return (
    <table class="change change-two">
      <thead>
        <tr>
          <th scope="col">%, batch in g</th>
          <th scope="col">left so</th>
          <th scope="col">choice {numberOf(panel, chosen)}</th>
          <th scope="col">choice {numberOf(panel, compared)}</th>
          <th scope="col">limit</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.line}>
            <th scope="row">{row.name}</th>
            <td>{bareOf(percentsOf(row, format)(row.before))}</td>
            {[one, two].map((offer) => (
              <EndsAt key={offer.remedy} row={offer.rows.find(({ line }) => line === row.line)} />
            ))}
            <td class="change-limit">{row.from === 'none' ? '' : boundWords(row, format)}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">Batch</th>
          <td>{format.mass(leftUg(panel, run.handle.view.value.state))}</td>
          <td>
            <b>{format.mass(one.endsUg)}</b>
          </td>
          <td>
            <b>{format.mass(two.endsUg)}</b>
          </td>
          <td class="change-limit" />
        </tr>
        <tr>
          <th scope="row">Still to add</th>
          <td />
          {[one, two].map((offer) => (
            <td key={offer.remedy}>{costWords(offer, run.app.settings.value.value.currency, format) ?? 'no price'}</td>
          ))}
          <td class="change-limit" />
        </tr>
      </tbody>
    </table>
  )
}

/** A line that a way neither changes nor leaves outside ends well inside its limits. */
function EndsAt({ row }: { row: FinishedRow | undefined }) {
  const format = useFormat()
  return (
    <td class={row?.breaks ? 'change-breaks' : undefined}>
      <b>{row === undefined ? 'inside' : bareOf(percentsOf(row, format)(row.after))}</b>
    </td>
  )
}

const leftUg = ({ consequences }: DeviationPanel, state: BatchState): number =>
  consequences?.finishedUg ?? state.totalUg

/** A tap puts another way beside the chosen one; a second tap takes it away. */
function Compare({ panel }: { panel: DeviationPanel }) {
  const run = useRun()
  const { ways, chosen, compared } = panel
  const others = ways.filter(
    (way) => way.feasible && way !== chosen && way.offer !== undefined && way.kind !== 'discard',
  )
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

const numberOf = ({ ways }: DeviationPanel, way: Way): number => ways.indexOf(way) + 1
