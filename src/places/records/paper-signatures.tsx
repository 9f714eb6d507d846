import '../../parts/mono.css'
import type { Format } from '../../app/format'
import type { Disposition } from '../../batch/kinds'
import type { MaterialRow } from '../../batch/record-materials'
import type { SignatureRow } from '../../batch/record-signatures'
import { Mark, type MarkKind } from '../../parts/mark'
import { afterWords } from './after-words'
import type { PaperProps } from './paper-props'

/** Who performed, who checked, what was decided, and whose signature stands under which entries. */
export function PaperSignatures({ record, format, say }: PaperProps) {
  const { people, closed, stage, signatures } = record
  const performedAtMs = lastOf(record.materials, () => true)
  const checkedAtMs = lastOf(record.materials, (weighing) => weighing.checkedBy !== undefined)
  const ofBatch = signatures.filter(({ looked }) => looked === undefined)
  const atSteps = signatures.flatMap(({ looked, ...row }) => (looked ? [{ ...row, looked }] : []))
  return (
    <section class="paper-section" aria-label="Signatures">
      <div class="paper-signs">
        <Box name="Performed by" who={people.performed.join(', ')} lines={[momentOf(performedAtMs, format)]} />
        <Box
          name="Checked by"
          who={people.checked.length > 0 ? people.checked.join(', ') : 'nobody'}
          lines={[momentOf(checkedAtMs, format)]}
        />
        <div class={`paper-sign ${closed ? `paper-sign-${closed.decision}` : ''}`}>
          <p class="paper-quiet">Decision</p>
          <p class="paper-sign-who">
            {closed && <Mark kind={markOf(closed.decision)} size={24} />}
            {closed ? wordOf(closed.decision) : stage === 'abandoned' ? 'Given up' : 'Not closed'}
          </p>
          <p>{closed ? `${closed.by}, ${format.dateTime(closed.atMs)}` : ''}</p>
          {closed?.note && <p>{closed.note}</p>}
        </div>
        {ofBatch.map((row) => (
          <Box
            key={row.entry}
            name={`Signed: ${row.meaning}`}
            who={row.person}
            lines={[format.dateTime(row.atMs), ...howWords(row, format), coverWords(row)]}
            late={afterWords(row.after)}
          />
        ))}
      </div>
      {atSteps.length > 0 && (
        <p>
          <strong>Checked at the step:</strong>{' '}
          {atSteps.map(({ looked, ...row }) => (
            <span key={row.entry}>
              {say.step(looked.step)}, {row.person} {format.time(row.atMs)}, {howWords(row, format).join(', ')}
              {looked.struck && <strong class="paper-outside"> (struck out since)</strong>}.{' '}
            </span>
          ))}
        </p>
      )}
      {signatures.length > 0 && (
        <p class="paper-quiet">
          Signatures by PIN or by name are a control of the bench; they do not prove who somebody is.
        </p>
      )}
    </section>
  )
}

function Box({
  name,
  who,
  lines,
  late,
}: {
  name: string
  who: string
  lines: readonly string[]
  late?: string | null
}) {
  return (
    <div class="paper-sign">
      <p class="paper-quiet">{name}</p>
      <p class="paper-sign-who">{who}</p>
      {lines
        .filter((line) => line !== '')
        .map((line) => (
          <p key={line}>{line}</p>
        ))}
      {late && <p class="paper-outside">{late}</p>}
    </div>
  )
}

function howWords({ how, pinSetAt, insteadOf, reason }: SignatureRow, format: Format): readonly string[] {
  const since = pinSetAt === undefined ? '' : ` valid since ${format.date(pinSetAt)}`
  const by = how === 'pin' ? `with a PIN${since}` : how === 'name' ? 'by name, without PIN' : ''
  return [by, ...(insteadOf === undefined ? [] : [`in the place of ${insteadOf}: ${reason ?? ''}`])].filter(
    (part) => part !== '',
  )
}

function coverWords({ covers }: SignatureRow): string {
  if (covers === undefined) return ''
  return covers === null ? 'covers an entry that is not here' : `covers entries 1 to ${covers}`
}

function lastOf(rows: readonly MaterialRow[], which: (weighing: MaterialRow['weighings'][number]) => boolean): number {
  return Math.max(0, ...rows.flatMap((row) => row.weighings.filter(which).map((weighing) => weighing.atMs)))
}

const momentOf = (atMs: number, format: Format): string => (atMs === 0 ? '' : format.dateTime(atMs))

const wordOf = (decision: Disposition): string => decision.charAt(0).toUpperCase() + decision.slice(1)

function markOf(decision: Disposition): MarkKind {
  switch (decision) {
    case 'accept':
      return 'within'
    case 'hold':
      return 'waiting'
    case 'rework':
      return 'part'
    case 'reject':
      return 'over'
  }
}
