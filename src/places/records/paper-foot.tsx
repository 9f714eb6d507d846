import '../../parts/mono.css'
import { latePart } from '../../app/late-part'
import type { DeviceVerdict } from '../../app/sign/device-verdict'
import type { BatchRecord } from '../../batch/record'
import { PaperDevice } from './paper-device'
import type { PaperProps } from './paper-props'

const Qr = latePart(() => import('../../parts/qr'), 'Qr')

interface PaperFootProps extends Pick<PaperProps, 'record' | 'format'> {
  verdicts: ReadonlyMap<string, DeviceVerdict>
}

/** Whether the log is whole, the hash to tell it by, and what this paper is not. */
export function PaperFoot({ record, format, verdicts }: PaperFootProps) {
  const { verification, trail } = record
  const { head } = verification
  const struck = trail.filter((row) => row.struck).length
  return (
    <footer class="paper-foot" id="verification">
      {head !== null && (
        <div class="paper-code-picture">
          <Qr text={verificationText(record)} label="Code of this record's batch, entries and last hash" />
        </div>
      )}
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
        <PaperDevice record={record} format={format} verdicts={verdicts} />
        <p>The code holds batch, entries and hash: compare it with the record on the tablet.</p>
        <p>
          Laid out after 21 CFR 211.188 and ISO 22716; no certification is claimed. This is not a safety assessment.
        </p>
      </div>
    </footer>
  )
}

/** What the code on the paper says: enough to find the record, and to see whether it is the same. */
export const verificationText = ({ header, verification: { entries, head } }: BatchRecord): string =>
  `${header.code} r${header.revision.number} ${entries} sha-256 ${head ?? ''}`
