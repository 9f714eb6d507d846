import type { Format } from '../../app/format'
import { capital } from '../../batch/capital'
import type { Say } from '../../batch/entry-phrases'
import { kindOfRemedy } from '../../batch/entry-phrases'
import type { NoteRow } from '../../batch/record'
import type { DeviationRecord } from '../../batch/record-deviations'
import { Mark } from '../../parts/mark'
import { decimalsApart } from '../../trade/apart'
import { deviationWords } from './deviation-words'
import type { PaperProps } from './paper-props'

/** Each deviation in its own box: what happened, what it would have led to, what was decided, why and by whom, and what was found out since. */
export function PaperDeviations({ record, format, say }: PaperProps) {
  if (record.deviations.length === 0) return null
  return (
    <section class="paper-section" aria-label="Deviations">
      {record.deviations.map((deviation) =>
        deviation.settled?.how === 'struck out' ? (
          <Mistyped key={deviation.id} deviation={deviation} notes={record.notes} format={format} />
        ) : (
          <Deviation key={deviation.id} deviation={deviation} record={record} format={format} say={say} />
        ),
      )}
    </section>
  )
}

/** The number was wrong, not the weighing. */
interface MistypedProps extends Pick<FoundProps, 'notes' | 'format'> {
  deviation: DeviationRecord
}

function Mistyped({ deviation, notes, format }: MistypedProps) {
  const { entry, number, name, byUg, direction, stepUg, settled } = deviation
  return (
    <div class="paper-mistyped" id={`entry-${entry}`}>
      <p>
        Deviation {number}, {name} {format.massWithUnit(byUg, stepUg)} {direction}, was a slip of the entry: struck out{' '}
        {settled && `${format.time(settled.atMs)} ${settled.by}, ${settled.reason}`}.
      </p>
      <Found of={deviation.id} notes={notes} format={format} />
    </div>
  )
}

interface FoundProps {
  of: string
  notes: readonly NoteRow[]
  format: Format
}

/** What was found out about a deviation, whenever that was. */
const Found = ({ of, notes, format }: FoundProps) =>
  notes
    .filter((note) => note.deviation === of)
    .map((note) => (
      <p key={note.entry} id={`entry-${note.entry}`}>
        <strong>
          Looked into {format.dateTime(note.atMs)}, {note.by}:
        </strong>{' '}
        {note.struck ? <s>{note.text}</s> : note.text}
      </p>
    ))

function Deviation({ deviation, record, format, say }: PaperProps & { deviation: DeviationRecord }) {
  const { number, byUg, stepUg, weighing, atMs, by, inCup, settled } = deviation
  const mass = (massUg: number): string => format.massWithUnit(massUg, stepUg)
  return (
    <div id={`entry-${deviation.entry}`} class={settled ? 'paper-deviation' : 'paper-deviation paper-deviation-open'}>
      <h3>
        <Mark kind="over" size={18} />
        Deviation {number}: {deviationWords(deviation, mass(byUg))}
      </h3>
      <p>
        {weighing && `${mass(weighing.netUg)} for ${mass(weighing.targetUg)} `}
        at {format.time(atMs)}, {by}
        {inCup ? ', still in its cup' : ''}. {consequenceWords(deviation, format)}{' '}
        <Settled deviation={deviation} record={record} format={format} say={say} />
      </p>
      <Found of={deviation.id} notes={record.notes} format={format} />
    </div>
  )
}

function Settled({ deviation, record, format, say }: PaperProps & { deviation: DeviationRecord }) {
  const { settled } = deviation
  if (settled === null) return <strong>Open: no way on has been chosen yet.</strong>
  const when = `${format.time(settled.atMs)}, ${settled.by}`
  if (settled.how === 'taken out' || settled.how === 'struck out')
    return (
      <>
        <strong>
          {settled.how === 'taken out' ? 'Taken out again' : 'Struck out'} {when}:
        </strong>{' '}
        {settled.reason}.
      </>
    )
  return (
    <>
      <strong>Remedy chosen {when}:</strong> {kindOfRemedy(settled.how)}
      {settled.totalUg === undefined ? '' : `, ${format.massWithUnit(settled.totalUg)} in all`}.{' '}
      {capital(settled.reason)}. {settled.changed > 0 && `${settled.changed} targets changed (marked “was” above). `}
      {asMadeWords(deviation, record, say)}
    </>
  )
}

function consequenceWords({ consequence, line }: DeviationRecord, format: Format): string {
  if (consequence === null) return ''
  const row = consequence.rows.find((each) => each.line === line) ?? consequence.rows[0]
  if (row === undefined) return ''
  const other = consequence.rows.filter((each) => each.breaks && each !== row).length
  const decimals = decimalsApart(row.breaks ? [row.after, row.low, row.high] : [row.low, row.high])
  const limits = `the ${row.from} allows ${format.number(row.low * 100, decimals)} to ${format.percent(row.high, decimals)}`
  const rest = other > 0 ? ` ${other} more would leave their limits.` : ''
  return `Left so the batch would end at ${format.percent(row.after, decimals)}; ${limits}: ${row.breaks ? 'outside' : 'within'}.${rest}`
}

function asMadeWords({ line, consequence }: DeviationRecord, record: PaperProps['record'], say: Say): string {
  const asMade = record.materials.find((row) => row.line === line)?.asMade
  const limits = consequence?.rows.find((row) => row.line === line)
  if (asMade === undefined || limits === undefined || record.closed === null) return ''
  const within = asMade >= limits.low - 5e-5 && asMade <= limits.high + 5e-5
  return `As made ${say.number(Number((asMade * 100).toFixed(2)))} %: ${within ? 'within' : 'outside'}.`
}
