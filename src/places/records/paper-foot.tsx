import '../../parts/mono.css'
import type { PaperProps } from './paper-props'

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

const spaced = (hash: string): string =>
  `${hash.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ')} … ${hash.slice(-8, -4)} ${hash.slice(-4)}`
