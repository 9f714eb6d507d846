import { useApp } from '../../app/app'
import { type Format, useFormat } from '../../app/format'
import type { Revision, SharedLimit } from '../../batch/formula'
import { fractionsOf } from '../../batch/schemas/check-revision'
import { overWhat, plannedShare, type SharedLine } from '../../batch/shared-limits'
import { Card } from '../../parts/card'
import { Row } from '../../parts/choice'

/** Limits over several lines together, with what the formula comes to as it is written. */
export function RevisionLimits({ revision }: { revision: Revision }) {
  const format = useFormat()
  const { materials } = useApp().catalogue
  const { sharedLimits = [] } = revision
  if (sharedLimits.length === 0) return null
  const lines = revision.phases.flatMap((phase) => phase.lines)
  const { qs } = fractionsOf(lines)
  const shared = lines.flatMap((line): SharedLine[] => {
    const material = materials.value.get(line.materialId)
    const { amount } = line
    const fraction =
      amount.kind === 'fraction' ? amount.fraction : amount.kind === 'as-needed' ? amount.expected : (qs ?? 0)
    return material ? [{ line, fraction, material }] : []
  })
  return (
    <Card label="Limits over several lines" class="formula-card-flat">
      <h2>Limits over several lines</h2>
      {sharedLimits.map((limit) => (
        <Row
          key={limit.id}
          label={limit.name}
          sub={`${overWhat(limit)}: ${format.percent(plannedShare(limit, shared))} here`}
          value={limitText(limit, format)}
        />
      ))}
    </Card>
  )
}

function limitText({ min, max }: SharedLimit, format: Format): string {
  const figure = (fraction: number): string => format.number(Number((fraction * 100).toFixed(4)))
  if (min !== undefined && max !== undefined) return `${figure(min)}–${figure(max)} %`
  if (max !== undefined) return `at most ${figure(max)} %`
  return min === undefined ? '' : `at least ${figure(min)} %`
}
