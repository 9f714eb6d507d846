import { useFormat } from '../../../app/format'
import { wordsOf } from '../../../batch/entry-words'
import { Button } from '../../../parts/button'
import { Icon } from '../../../parts/icon'
import { personById } from '../people'
import { useRun } from '../run-context'
import { entriesOfStep, type StepEntry } from '../step-entries'
import { useSay } from '../use-say'

/** What was recorded for the step in hand, each with where it stands and a way to strike it out. */
export function EntryList() {
  const run = useRun()
  const { state } = run.handle.view.value
  const entries = entriesOfStep(state, run.handle.entryStates.value, run.stepId.value ?? '')
  if (entries.length === 0) return <p class="entries-none">Nothing is recorded for this step.</p>
  return (
    <ol class="entries" aria-label="Recorded for this step">
      {entries.map((entry) => (
        <EntryRow key={entry.event.id} entry={entry} />
      ))}
    </ol>
  )
}

function EntryRow({ entry }: { entry: StepEntry }) {
  const run = useRun()
  const format = useFormat()
  const say = useSay()
  const { event, struck } = entry
  const by = personById(run.handle.view.value.state, run.app.catalogue.people.value, event.by)
  const words = wordsOf(event, say)
  return (
    <li class="entry-row" data-entry={event.id} data-state={entry.state}>
      <div class="entry-words">
        <p>{struck === null ? words : <s>{words}</s>}</p>
        <p class="entry-fact">
          {format.time(Date.parse(event.at))} {by?.initials ?? event.by} · {entry.state.replace('-', ' ')}
          {struck !== null && ` · struck out: ${struck}`}
        </p>
      </div>
      {entry.state !== 'recorded' && <Icon name={entry.state === 'one-copy' ? 'copy' : 'circle-dashed'} />}
      {entry.strikable && (
        <Button
          size="small"
          label="Strike out"
          name={`Strike out: ${words}`}
          onPress={() => {
            run.sheet.value = { name: 'strike', about: event.id }
          }}
        />
      )}
    </li>
  )
}
