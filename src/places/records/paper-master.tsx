import type { Line, Revision } from '../../batch/formula'
import { overWhat } from '../../batch/shared-limits'
import { askOf, nameOfLine } from '../../batch/wording'
import { figure } from './figure'
import { allowedText } from './paper-limits'
import type { PaperProps } from './paper-props'

/** The formula as it was approved, whole: the batch carries its own copy. */
export function PaperMaster({ record, format, say }: PaperProps) {
  const { header } = record
  const { revision } = header
  const share = (fraction: number): string => format.number(Number((fraction * 100).toFixed(4)))
  return (
    <section class="paper-section paper-new-page">
      <h2>
        Master formula: {header.formulaCode} revision {revision.number}
      </h2>
      <p>
        {revision.approvedBy === undefined
          ? 'Not approved yet.'
          : `Approved by ${revision.approvedBy}${revision.approvedAt ? `, ${format.dateTime(Date.parse(revision.approvedAt))}` : ''}.`}
      </p>
      {revision.note && <p class="paper-quiet">{revision.note}</p>}
      <table class="paper-table">
        <thead>
          <tr>
            <th scope="col">
              <span class="visually-hidden">Phase</span>
            </th>
            <th scope="col">Line</th>
            <th scope="col" class="paper-number">
              %
            </th>
            <th scope="col" class="paper-number">
              Allowed
            </th>
          </tr>
        </thead>
        <tbody>
          {revision.phases.flatMap((phase) =>
            phase.lines.map((line) => (
              <tr key={line.id}>
                <td class="paper-phase">{phase.letter}</td>
                <td>
                  {nameOfLine(header, line.id)}
                  <span class="paper-small"> {inciOf(record, line)}</span>
                </td>
                <td class="paper-number">{amountWords(line, share)}</td>
                <td class="paper-number">{allowedWords(line, share)}</td>
              </tr>
            )),
          )}
        </tbody>
      </table>
      {record.limits.length > 0 && (
        <>
          <h3>Limits over several lines</h3>
          <ul class="paper-notes">
            {record.limits.map(({ limit }) => (
              <li key={limit.id}>
                {limit.name} ({overWhat(limit)}): {allowedText(limit, format)}.
              </li>
            ))}
          </ul>
        </>
      )}
      <h3>Procedure</h3>
      <ol class="paper-procedure">
        {revision.procedure.map((step) => {
          const more = [askOf(step, header), step.instruction, step.caution].filter((part) => part)
          return (
            <li key={step.id}>
              <strong>{step.kind === 'weigh' ? `Weigh ${say.step(step.id)}` : say.step(step.id)}</strong>
              {more.length > 0 && `: ${more.join('. ')}`}.
            </li>
          )
        })}
      </ol>
      <h3>Specification</h3>
      <ul class="paper-notes">
        {revision.specification.map((check) => (
          <li key={check.id}>
            {check.label}: {specificationWords(check, share, format)}
          </li>
        ))}
      </ul>
    </section>
  )
}

const inciOf = ({ header }: PaperProps['record'], line: Line): string =>
  header.materials
    .find((material) => material.id === line.materialId)
    ?.inci.map((part) => part.name)
    .join(', ') ?? ''

function amountWords({ amount }: Line, share: (fraction: number) => string): string {
  switch (amount.kind) {
    case 'fraction':
      return share(amount.fraction)
    case 'qs':
      return 'q.s. to 100'
    case 'as-needed':
      return `about ${share(amount.expected)}`
  }
}

function allowedWords({ amount, range, tolerance }: Line, share: (fraction: number) => string): string {
  if (amount.kind === 'as-needed') return `${share(amount.min)}–${share(amount.max)}`
  if (range) return `${share(range.min)}–${share(range.max)}`
  if (tolerance && 'relative' in tolerance) return `±${share(tolerance.relative)} % of target`
  if (tolerance) return `±${tolerance.absoluteUg / 1e6} g`
  return amount.kind === 'qs' ? '' : '±1 % of target'
}

function specificationWords(
  check: Revision['specification'][number],
  share: (fraction: number) => string,
  format: PaperProps['format'],
): string {
  const { min, max } = check.limits ?? {}
  const range =
    min !== undefined && max !== undefined
      ? `${figure(min, format)} to ${figure(max, format)}`
      : (check.expected ?? 'to be recorded')
  const basis = check.basis?.kind === 'dilution' ? `${share(check.basis.fraction)} % dilution` : check.basis?.kind
  const when = check.when === 'in-process' ? 'in process' : 'rested'
  return [check.unit === undefined ? range : `${range} ${check.unit}`, check.method ?? basis, when]
    .filter((part) => part !== undefined)
    .join(', ')
}
