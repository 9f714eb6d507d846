import { instrumentWords } from '../../batch/entry-phrases'
import type { PaperProps } from './paper-props'

/** Instruments with what they showed, vessels with their tare, and the look over the bench. */
export function PaperEquipment({ record, format, say }: PaperProps) {
  const { equipment, preflight } = record
  const tared = equipment.vessels.filter((vessel) => vessel.tareUg !== undefined)
  const open = preflight.filter((item) => !item.done)
  return (
    <section class="paper-section" id="equipment">
      <h2>Equipment, checked before use</h2>
      <p>
        {equipment.checks.length === 0 && 'No instrument check was recorded. '}
        {equipment.checks.map(({ entry, check, good, atMs, by }) => (
          <span key={entry}>
            {instrumentWords(check, say)}
            {good ? '' : <strong> (not good)</strong>}, {format.time(atMs)} {by}.{' '}
          </span>
        ))}
        {tared.length > 0 && (
          <>
            <strong>Vessels</strong>{' '}
            {tared
              .map(({ name, tareUg = 0, standsIn }) =>
                [name, `tare ${format.mass(tareUg)}`, standsIn ? `with ${standsIn}` : '']
                  .filter((part) => part !== '')
                  .join(' '),
              )
              .join(', ')}{' '}
            g.
          </>
        )}
      </p>
      {equipment.balances.length > 0 && (
        <p>
          <strong>Weighed on</strong>{' '}
          {equipment.balances.map(
            ({ name, stepUg, lines }) =>
              `${name} (reads to ${format.massWithUnit(stepUg, stepUg)}): ${lines.join(', ')}. `,
          )}
          {equipment.tools.length > 0 && (
            <>
              <strong>Mixed with</strong> {equipment.tools.join(', ')}.
            </>
          )}
        </p>
      )}
      {preflight.length > 0 && (
        <p class="paper-quiet">
          Before the start: {preflight.length - open.length} of {preflight.length} points done
          {open.length > 0 && `; left open: ${open.map((item) => item.text).join('; ')}`}.
        </p>
      )}
      {record.header.kept.length > 0 && (
        <p>
          <strong>Kept all the same:</strong>{' '}
          {record.header.kept
            .map((kept) => `${kept.about} (${kept.code.toLowerCase().replaceAll('_', ' ')}): ${kept.reason}`)
            .join('; ')}
          .
        </p>
      )}
    </section>
  )
}

export function PaperNotes({ record, format, say }: PaperProps) {
  // What was found out about a deviation stands with it.
  const notes = record.notes.filter((note) => note.deviation === undefined)
  if (notes.length === 0) return null
  return (
    <section class="paper-section">
      <h2>Notes</h2>
      <ul class="paper-notes">
        {notes.map((note) => (
          <li key={note.entry} id={`entry-${note.entry}`} class={note.struck ? 'paper-struck-row' : undefined}>
            <span class="paper-quiet">
              {format.dateTime(note.atMs)}, {note.by}
              {note.step === undefined ? '' : `, at ${say.step(note.step)}`}
            </span>{' '}
            {note.struck ? <s>{note.text}</s> : note.text}
          </li>
        ))}
      </ul>
    </section>
  )
}
