import '../../parts/mono.css'
import type { Disposition } from '../../batch/kinds'
import type { MaterialRow } from '../../batch/record-materials'
import { Mark, type MarkKind } from '../../parts/mark'
import type { PaperProps } from './paper-props'

/** Who performed, who checked, what was decided. */
export function PaperSigns({ record, format }: PaperProps) {
  const { people, closed, stage } = record
  const performedAtMs = lastOf(record.materials, () => true)
  const checkedAtMs = lastOf(record.materials, (weighing) => weighing.checkedBy !== undefined)
  return (
    <section class="paper-signs" aria-label="Signatures">
      <Sign name="Performed by" who={people.performed.join(', ')} when={momentOf(performedAtMs, format)} />
      <Sign
        name="Checked by"
        who={people.checked.length > 0 ? people.checked.join(', ') : 'nobody'}
        when={momentOf(checkedAtMs, format)}
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
      {record.signatures.map((signature) => (
        <Sign
          key={signature.entry}
          name={signature.meaning}
          who={signature.person}
          when={format.dateTime(signature.atMs)}
        />
      ))}
    </section>
  )
}

/** Whether the log is whole, and what this paper is not. */
export function PaperFoot({ record }: PaperProps) {
  const { verification, trail } = record
  const struck = trail.filter((row) => row.struck).length
  return (
    <footer class="paper-foot">
      <p>
        {verification.entries} entries, last{' '}
        <span class="mono">sha-256 {verification.head === null ? 'none' : spaced(verification.head)}</span>.{' '}
        {verification.intact ? (
          'Every hash fits the entry and the one before it.'
        ) : (
          <strong class="paper-outside">
            The chain breaks at entry {verification.brokenAt}:{' '}
            {verification.why === 'CHANGED' ? 'it was changed after it was written' : 'an entry before it is missing'}.
          </strong>
        )}{' '}
        {struck === 0 ? 'Nothing was struck out.' : `${struck} struck out and still legible.`}
      </p>
      <p>Laid out after 21 CFR 211.188 and ISO 22716; no certification is claimed. This is not a safety assessment.</p>
    </footer>
  )
}

function Sign({ name, who, when }: { name: string; who: string; when: string }) {
  return (
    <div class="paper-sign">
      <p class="paper-quiet">{name}</p>
      <p class="paper-sign-who">{who}</p>
      <p>{when}</p>
    </div>
  )
}

function lastOf(rows: readonly MaterialRow[], which: (weighing: MaterialRow['weighings'][number]) => boolean): number {
  return Math.max(0, ...rows.flatMap((row) => row.weighings.filter(which).map((weighing) => weighing.atMs)))
}

const momentOf = (atMs: number, format: PaperProps['format']): string => (atMs === 0 ? '' : format.dateTime(atMs))

const spaced = (hash: string): string =>
  `${hash.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ')} … ${hash.slice(-8, -4)} ${hash.slice(-4)}`

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
