import './deviation-proof.css'
import { type Format, useFormat } from '../../app/format'
import { whyNot } from '../../app/refusals/ways-on'
import { proofOf } from '../../batch/deviation'
import { lastVessel } from '../../batch/remedy-problem'
import type { BatchState } from '../../batch/state'
import { Sheet } from '../../parts/sheet'
import type { Micrograms } from '../../trade/mass'
import type { DeviationPanel } from './deviation-model'
import { costWords, type LimitWords, limitWords, orderWords, rankingWords } from './deviation-words'
import { bareOf, percentsOf } from './figures'
import { useRun } from './run-context'
import { nameIn, wayTitle, wordsFor } from './way-words'

/** The chosen way with its whole proof: why it stands where it does, new targets, every line and limit, cost. */
export function Proof({ panel, onClose }: { panel: DeviationPanel; onClose: () => void }) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const { chosen, ways } = panel
  const offer = chosen?.offer
  if (!chosen || !offer) return null
  const cost = costWords(offer, run.app.settings.value.value.currency, format)
  const closed = ways.flatMap(({ kind, offer: other }) => (other?.why ? [{ kind, other, why: other.why }] : []))
  return (
    <Sheet title={wayTitle(chosen, state, format)} onClose={onClose} wide reading>
      <p>
        {rankingWords} {orderWords(offer.reason)}
      </p>
      <p>
        The batch comes to {format.massWithUnit(offer.endsUg)}
        {offer.totalUg !== offer.endsUg && `, with ${format.massWithUnit(offer.totalUg)} put in`};{' '}
        {roomSentence(state, offer.endsUg, format)}.{' '}
        {cost === null ? 'A price is missing: no cost.' : `${cost} of material is still to add.`}
      </p>
      <NewTargets panel={panel} />
      <Composition panel={panel} />
      {closed.length > 0 && (
        <section aria-label="What cannot be">
          <h3>What cannot be</h3>
          <ul class="proof-closed">
            {closed.map(({ kind, other, why }) => (
              <li key={kind}>
                <b>{wayTitle({ kind, feasible: false, offer: other }, state, format)}.</b>{' '}
                {whyNot(why, wordsFor(state, format)).full}
              </li>
            ))}
          </ul>
        </section>
      )}
    </Sheet>
  )
}

function NewTargets({ panel }: { panel: DeviationPanel }) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const offer = panel.chosen?.offer
  if (!offer || offer.targets.length === 0) return <p>No target changes.</p>
  return (
    <table class="proof">
      <caption>New targets, g</caption>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">was</th>
          <th scope="col">is to be</th>
        </tr>
      </thead>
      <tbody>
        {offer.targets.map(({ step, line, fromUg, toUg }) => {
          const stepUg = state.plan.lines.get(line)?.balance.stepUg
          return (
            <tr key={step}>
              <th scope="row">{nameIn(state, line)}</th>
              <td>{format.mass(fromUg, stepUg)}</td>
              <td>
                <b>{format.mass(toUg, stepUg)}</b>
              </td>
            </tr>
          )
        })}
        {offer.heldBackUg !== state.heldBackUg && (
          <tr>
            <th scope="row">Held back</th>
            <td>{format.mass(state.heldBackUg)}</td>
            <td>
              <b>{format.mass(offer.heldBackUg)}</b>
            </td>
          </tr>
        )}
      </tbody>
    </table>
  )
}

function Composition({ panel }: { panel: DeviationPanel }) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const offer = panel.chosen?.offer
  const rows = offer ? proofOf(state, panel.deviation.id, offer) : []
  if (rows.length === 0) return null
  return (
    <table class="proof">
      <caption>Finished product, %</caption>
      <thead>
        <tr>
          <th scope="col">Line or limit</th>
          <th scope="col">left so</th>
          <th scope="col">with this</th>
          <th scope="col">limit, spare</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => {
          const percent = percentsOf(row, format)
          return (
            <tr key={row.line}>
              <th scope="row">{row.name}</th>
              <td>{bareOf(percent(row.before))}</td>
              <td class={row.breaks ? 'proof-breaks' : undefined}>
                <b>{bareOf(percent(row.after))}</b>
              </td>
              <td>{joined(limitWords(row, format))}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

const joined = ({ limit, spare }: LimitWords): string => (spare === '' ? limit : `${limit}, ${spare}`)

function roomSentence(state: BatchState, endsUg: Micrograms, format: Format): string {
  const { name = 'the vessel', capacityUg, stirsUg } = lastVessel(state) ?? {}
  const to = (mostUg: Micrograms): string => `${format.massWithUnit(mostUg)} (spare ${format.mass(mostUg - endsUg)})`
  const room = capacityUg === undefined ? 'what it holds is not stated' : `holds ${to(capacityUg)}`
  const stirs =
    stirsUg === undefined ? '' : `, its stirrer moves ${format.massWithUnit(stirsUg.min)} to ${to(stirsUg.max)}`
  return `${name} ${room}${stirs}`
}
