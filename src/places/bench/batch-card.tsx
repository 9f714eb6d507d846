import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { latePart } from '../../app/late-part'
import type { BatchSummary } from '../../batch/summary'
import { Button } from '../../parts/button'
import { Card } from '../../parts/card'
import { Cup } from '../../parts/cup'
import { Icon } from '../../parts/icon'
import { Pill } from '../../parts/pill'
import type { BenchCard } from './order'

const BatchForecast = latePart(() => import('./batch-forecast'), 'BatchForecast')

interface BatchCardProps {
  card: BenchCard
  first: boolean
  /** What the batch is called in passing: "gel". */
  name: string
  onGo: () => void
}

/** One batch in hand: what it holds, what to do next, its timer, and the way to it. */
export const BatchCard = ({ card, first, name, onGo }: BatchCardProps) => {
  const { batch, ringing } = card
  const format = useFormat()
  const heading = `batch-${batch.id}`
  const label = ringing.length > 0 ? `Go to ${name}` : card.parked ? 'Take up' : 'Go on'
  return (
    <Card lip={first ? 'action' : 'none'} labelledBy={heading} class="batch">
      <span class="batch-cup">
        <Cup strata={batch.cup.strata} targetUg={batch.cup.targetUg} width={104} height={118} />
      </span>
      <div class="batch-words">
        <p class="batch-name" id={heading}>
          <strong>{batch.shortName}</strong>
          <span>
            {' '}
            · {batch.formulaName} r{batch.revision}, {format.massWithUnit(batch.totalUg, 1_000_000)}
          </span>
        </p>
        <h2 class="batch-next">{batch.next?.text ?? 'All steps are done: close the batch'}</h2>
        <p class="batch-sub">{besides(batch)}</p>
        <Marks card={card} />
      </div>
      <TimerColumn card={card} />
      <Button
        kind={first ? 'filled' : 'quiet'}
        size={first ? 'primary' : 'normal'}
        label={label}
        name={`${label}${ringing.length > 0 ? '' : `: ${batch.shortName}`}`}
        onPress={onGo}
        class="batch-go"
      />
    </Card>
  )
}

/** What comes with the next step, and how far the batch is. */
const besides = ({ next, done, steps }: BatchSummary): string => {
  const place = next?.place ? `${next.place.replace(/[.\s]+$/, '')}. ` : ''
  const phase = next && next.phase !== 'finish' ? `Phase ${next.phase}, ` : ''
  return `${place}${phase}${done} of ${steps} steps done.`
}

const Marks = ({ card: { batch, parked, moreTimers } }: { card: BenchCard }) => {
  const format = useFormat()
  const marks = [
    parked && <Pill key="parked" icon="pause" text={`parked since ${format.dateTime(batch.touchedAtMs)}`} />,
    batch.openDeviations > 0 && (
      <Pill key="deviation" tone="over" icon="triangle-alert" text={`${batch.openDeviations} to settle`} />
    ),
    batch.doubts > 0 && <Pill key="doubt" tone="caution" icon="info" text={`${batch.doubts} to check`} />,
    moreTimers > 0 && <Pill key="timers" icon="timer" text={`${moreTimers} more ${plural('timer', moreTimers)}`} />,
  ].filter(Boolean)
  return marks.length > 0 ? <p class="batch-marks">{marks}</p> : null
}

const TimerColumn = ({ card: { batch, timer, ringing } }: { card: BenchCard }) => {
  const format = useFormat()
  const nowMs = useApp().nowMs.value
  if (timer === null) return <BatchForecast batch={batch} />
  if (ringing.length === 0)
    return (
      <p class="batch-timer">
        <span class="batch-timer-name">{timer.label}</span>
        <span class="batch-timer-big">{format.duration(timer.deadlineAtMs - nowMs)}</span>
        <span class="batch-timer-name">until {format.time(timer.deadlineAtMs)}</span>
      </p>
    )
  return (
    <p class="batch-timer">
      <span class="batch-timer-name">{timer.label}</span>
      <span class="batch-timer-big">{format.time(timer.deadlineAtMs)}</span>
      <span class="batch-ringing">
        <Icon name="bell-ring" />
        <span>
          ringing <span class="batch-late">{format.duration(nowMs - timer.deadlineAtMs)} late</span>
        </span>
      </span>
    </p>
  )
}

const plural = (word: string, count: number): string => (count === 1 ? word : `${word}s`)
