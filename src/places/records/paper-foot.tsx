import '../../parts/mono.css'
import type { PaperProps } from './paper-props'

/** Whether the log is whole, the hash to tell it by, and what this paper is not. */
export function PaperFoot({ record }: Pick<PaperProps, 'record'>) {
  const { verification, trail } = record
  const { head } = verification
  const struck = trail.filter((row) => row.struck).length
  return (
    <footer class="paper-foot" id="verification">
      <div>
        <h2>Verification</h2>
        <p>
          {verification.entries} entries, last{' '}
          <span class="mono">sha-256 {head === null ? 'none' : head.replace(/(.{8})(?=.)/g, '$1 ')}</span>.{' '}
          {verification.intact ? (
            'Every hash fits the entry and the one before it.'
          ) : (
            <strong class="paper-outside">
              The chain breaks at entry {verification.brokenAt}:{' '}
              {verification.why === 'CHANGED' ? 'it was changed after it was written' : 'an entry before it is missing'}
              .
            </strong>
          )}{' '}
          {struck === 0 ? 'Nothing was struck out.' : `${struck} struck out and still legible.`}
        </p>
        <p>
          Laid out after 21 CFR 211.188 and ISO 22716; no certification is claimed. This is not a safety assessment.
        </p>
      </div>
    </footer>
  )
}
