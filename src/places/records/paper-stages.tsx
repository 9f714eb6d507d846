import type { StageRow } from '../../batch/record-stages'
import type { PaperProps } from './paper-props'

/** Yield at each stage: what it should have come to, what it came to by the books. */
export function PaperStages({ record, format }: PaperProps) {
  if (record.stages.length === 0) return null
  return (
    <section class="paper-section">
      <h2>Yield at each stage</h2>
      <table class="paper-table">
        <thead>
          <tr>
            <th scope="col">Stage</th>
            <th scope="col" class="paper-number">
              Theoretical g
            </th>
            <th scope="col" class="paper-number">
              Actual g
            </th>
            <th scope="col" class="paper-number">
              Yield
            </th>
          </tr>
        </thead>
        <tbody>
          {record.stages.map((stage, index) => (
            <tr key={index}>
              <td>
                {stageWords(stage)} <span class="paper-small">{format.time(stage.atMs)}</span>
              </td>
              <td class="paper-number">{format.mass(stage.theoreticalUg)}</td>
              <td class="paper-number">{format.mass(stage.actualUg)}</td>
              <td class="paper-number">
                {stage.theoreticalUg > 0 ? format.percent(stage.actualUg / stage.theoreticalUg) : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function stageWords({ kind, of, into }: StageRow): string {
  switch (kind) {
    case 'weighed':
      return `Phase ${of} weighed`
    case 'moved':
      return `${of} into ${into}`
    case 'made up':
      return `${of} made up`
    case 'filled':
      return `Filled from ${of}`
  }
}
