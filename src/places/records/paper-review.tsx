import './paper-review.css'
import type { Finding } from '../../batch/record-review'
import { Mark } from '../../parts/mark'
import type { PaperProps } from './paper-props'
import { findingWords } from './review-words'

interface PaperReviewProps extends Omit<PaperProps, 'record'> {
  findings: readonly Finding[]
  /** Leads to a place in the record. */
  onLead: (at: string) => void
}

/** What a reviewer looks at first; each leads to its place in the record. */
export function PaperReview({ findings, format, say, onLead }: PaperReviewProps) {
  return (
    <section class="paper-section paper-review" aria-label="Out of the ordinary">
      <h2>Out of the ordinary</h2>
      {findings.length === 0 && (
        <p class="paper-review-none">
          <Mark kind="within" size={22} /> Nothing out of the ordinary.
        </p>
      )}
      <ul class="paper-findings">
        {findings.map((finding, index) => {
          const [what, more] = findingWords(finding, format, say)
          return (
            <li key={index}>
              <button type="button" class="paper-finding" data-to={finding.at} onClick={() => onLead(finding.at)}>
                <strong>{what}</strong> <span>{more}</span>
              </button>
            </li>
          )
        })}
      </ul>
    </section>
  )
}
