import type { Format } from '../../app/format'
import { addressOf } from '../../app/routes'
import type { BatchSummary } from '../../batch/summary'
import { Icon } from '../../parts/icon'
import { Mark } from '../../parts/mark'
import { stateOf } from './record-state'

/** One batch in the list: what it is, how it ended, what is still to be looked at. */
export function RecordRow({ batch, format }: { batch: BatchSummary; format: Format }) {
  const { kind, word } = stateOf(batch)
  return (
    <a class="record-row" href={addressOf({ place: 'records', batch: batch.id })}>
      <span class="record-row-what">
        <span class="record-row-code">{batch.code}</span>
        <span class="record-row-formula">
          {batch.formulaName} r{batch.revision}, {format.massWithUnit(batch.totalUg)}
        </span>
      </span>
      <span class="record-row-when">
        {format.date(batch.touchedAtMs)}
        <span class="record-row-sub">
          {batch.closedAtMs === undefined
            ? `opened ${format.date(batch.openedAtMs)}`
            : `closed ${format.date(batch.closedAtMs)}`}
        </span>
      </span>
      <span class="record-row-marks">
        <span class={`record-row-state record-row-${kind}`}>
          <Mark kind={kind} size={22} />
          {word}
        </span>
        {batch.unexplainedUg !== undefined && (
          <span class="record-row-state record-row-over">
            <Mark kind="over" size={22} />
            {format.percent(batch.unexplainedUg / batch.totalUg, 1)} unexplained
          </span>
        )}
        {batch.outOfLimits !== undefined && (
          <span class="record-row-state record-row-over">
            <Mark kind="over" size={22} />
            {batch.outOfLimits} out of limits
          </span>
        )}
        <span class="record-row-sub">{subOf(batch)}</span>
      </span>
      <Icon name="chevron-right" />
    </a>
  )
}

function subOf({ checksDue, deviations, doubts, done, steps, stage, reworks = 0 }: BatchSummary): string {
  const parts = [
    reworks === 0 ? '' : reworks === 1 ? 'reworked' : `reworked ${reworks} times`,
    stage === 'in-hand' || stage === 'parked' ? `${done} of ${steps} steps` : '',
    checksDue.length > 0 && stage === 'closed'
      ? `waiting for ${checksDue.length} ${checksDue.length === 1 ? 'check' : 'checks'}`
      : '',
    deviations > 0 ? `${deviations} ${deviations === 1 ? 'deviation' : 'deviations'}` : '',
    doubts > 0 ? `${doubts} to look at` : '',
  ]
  return parts.filter((part) => part !== '').join(', ')
}
