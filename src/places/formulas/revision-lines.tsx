import './revision.css'
import { useApp } from '../../app/app'
import { type Format, useFormat } from '../../app/format'
import { addressOf } from '../../app/routes'
import type { Line, Phase, Revision } from '../../batch/formula'
import { fractionsOf } from '../../batch/schemas/check-revision'
import { Card } from '../../parts/card'

/** What goes in, phase by phase, with the sum at the foot. */
export function RevisionLines({ revision }: { revision: Revision }) {
  const format = useFormat()
  const lines = revision.phases.flatMap((phase) => phase.lines)
  const { stated, qs } = fractionsOf(lines)
  return (
    <Card label="Lines" class="formula-card-flat">
      <table class="lines">
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col" class="lines-number">
              %
            </th>
            <th scope="col" class="lines-extra">
              weighed within
            </th>
            <th scope="col" class="lines-extra">
              finished product
            </th>
          </tr>
        </thead>
        {revision.phases.map((phase) => (
          <PhaseRows key={phase.letter} phase={phase} qs={qs} format={format} />
        ))}
        <tfoot>
          <tr>
            <th scope="row">In all</th>
            <td class="lines-number">{format.number((qs === null ? stated : stated + qs) * 100, 3)}</td>
            <td class="lines-extra" />
            <td class="lines-extra" />
          </tr>
        </tfoot>
      </table>
    </Card>
  )
}

function PhaseRows({ phase, qs, format }: { phase: Phase; qs: number | null; format: Format }) {
  const share = phase.lines.reduce((sum, line) => sum + shareOf(line, qs), 0)
  return (
    <tbody>
      <tr class="lines-phase">
        <th scope="rowgroup">
          <span class="letter">{phase.letter}</span>
          {phase.name}
        </th>
        <td class="lines-number lines-quiet">{format.number(share * 100, 2)}</td>
        <td class="lines-extra" />
        <td class="lines-extra" />
      </tr>
      {phase.lines.map((line) => (
        <LineRow key={line.id} line={line} qs={qs} format={format} />
      ))}
    </tbody>
  )
}

function LineRow({ line, qs, format }: { line: Line; qs: number | null; format: Format }) {
  const { materials } = useApp().catalogue
  const name = materials.value.get(line.materialId)?.name ?? line.materialId
  const suffix = { qs: ', q.s.', 'as-needed': ', as needed', fraction: '' }[line.amount.kind]
  return (
    <tr>
      <th scope="row">
        <a href={addressOf({ place: 'materials', material: line.materialId })}>{name}</a>
        {suffix}
      </th>
      <td class="lines-number">{format.number(shareOf(line, qs) * 100, 3)}</td>
      <td class="lines-extra">{toleranceText(line, format)}</td>
      <td class="lines-extra">{rangeText(line, format)}</td>
    </tr>
  )
}

function shareOf({ amount }: Line, qs: number | null): number {
  switch (amount.kind) {
    case 'fraction':
      return amount.fraction
    case 'as-needed':
      return amount.expected
    case 'qs':
      return qs ?? 0
  }
}

function toleranceText({ tolerance }: Line, format: Format): string {
  if (tolerance === undefined) return '± 1 %'
  return 'relative' in tolerance
    ? `± ${format.number(tolerance.relative * 100)} %`
    : `± ${format.massWithUnit(tolerance.absoluteUg, 1000)}`
}

function rangeText({ range, amount }: Line, format: Format): string {
  if (amount.kind === 'as-needed') return `${format.number(amount.min * 100)}–${format.number(amount.max * 100)} %`
  if (amount.kind === 'qs') return `${format.number((amount.heldBack ?? 0.03) * 100)} % held back`
  return range ? `${format.number(range.min * 100)}–${format.number(range.max * 100)} %` : ''
}
