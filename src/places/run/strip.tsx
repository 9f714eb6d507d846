import './strip.css'
import { useFormat } from '../../app/format'
import { latePart } from '../../app/late-part'
import { addressOf } from '../../app/routes'
import { Button } from '../../parts/button'
import { Initials, TimerChip } from '../../parts/chips'
import { useRun } from './run-context'
import type { TimerFact } from './timers'

/** What waits comes right after the clocks. */
const LateChips = latePart(() => import('./late-chips'), 'LateChips')

/** More chips than this would push the others off; the rest are counted and lead to the bench. */
const mostTimers = 3

/** Which batch this is, every clock that runs on any batch, what waits to be looked at, and who is here. */
export function Strip() {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const { header } = state
  const was = state.totalWas.at(-1)
  const size = `${format.massWithUnit(state.totalUg)}${was === undefined ? '' : `, was ${format.mass(was)}`}`
  const person = run.app.catalogue.people.value.get(state.person)
  return (
    <header class="strip">
      <div class="strip-back">
        <Button kind="plain" icon="arrow-left" label="Bench" href={addressOf({ place: 'bench' })} />
      </div>
      <div class="strip-title">
        <p class="strip-name">{header.shortName}</p>
        <p class="strip-formula">
          {header.formulaName} r{header.revision.number} · {size}
        </p>
      </div>
      <Chips />
      <div class="strip-person">
        <Initials
          text={person?.initials ?? '?'}
          name={`${person?.name ?? 'nobody'} is at work: hand over`}
          onPress={() => {
            run.sheet.value = { name: 'hand-over' }
          }}
        />
      </div>
    </header>
  )
}

function Chips() {
  const run = useRun()
  const timers = run.timers.value
  const rest = timers.slice(mostTimers)
  const bench = addressOf({ place: 'bench' })
  return (
    <ul class="strip-chips" aria-label="Timers and what waits">
      {timers.slice(0, mostTimers).map((fact) => (
        <li key={fact.timer}>
          <Clock fact={fact} />
        </li>
      ))}
      {rest.length > 0 && (
        <li>
          <TimerChip icon="hourglass" small="Timers" bold={`${rest.length} more`} href={bench} />
        </li>
      )}
      <LateChips />
    </ul>
  )
}

function Clock({ fact }: { fact: TimerFact }) {
  const run = useRun()
  const format = useFormat()
  const small = fact.batchName === undefined ? fact.label : `${fact.batchName}, ${fact.label}`
  if (fact.ringing)
    return (
      <TimerChip
        icon="bell-ring"
        ringing
        small={small}
        bold={`Stop, ${format.duration(fact.leftMs)} late`}
        onPress={() => void run.stopBell(fact)}
      />
    )
  const bold = `${format.duration(fact.leftMs)} left`
  const { step } = fact
  if (fact.batchName === undefined && step !== undefined)
    return <TimerChip icon="hourglass" small={small} bold={bold} onPress={() => run.take(step)} />
  return <TimerChip icon="hourglass" small={small} bold={bold} href={addressOf({ place: 'run', batch: fact.batch })} />
}
