import type { BatchSummary } from '../../batch/summary'

type Timer = BatchSummary['timers'][number]

/** A batch in hand as its card shows it at one moment. */
export interface BenchCard {
  readonly batch: BatchSummary
  /** The timer that matters most: the one that rang first, else the one that rings next. */
  readonly timer: Timer | null
  readonly ringing: readonly Timer[]
  readonly moreTimers: number
  readonly parked: boolean
}

/** The most urgent first: what rings, then what is overdue, then the nearest timer, then what was touched last. */
export function benchCards(batches: readonly BatchSummary[], nowMs: number): readonly BenchCard[] {
  return batches.map((batch) => cardOf(batch, nowMs)).sort((a, b) => urgency(a, b, nowMs))
}

/** When this batch's first overdue check was due, or nothing. */
export function overdueSinceMs(batch: BatchSummary, nowMs: number): number | undefined {
  const due = batch.checksDue.filter(({ dueAtMs }) => dueAtMs <= nowMs).map(({ dueAtMs }) => dueAtMs)
  return due.length > 0 ? Math.min(...due) : undefined
}

/** "gel", or "gel 017" where another batch in hand is called a gel too. */
export function callName(batch: BatchSummary, batches: readonly BatchSummary[]): string {
  const kind = kindOf(batch)
  const alone = batches.every((other) => other.id === batch.id || kindOf(other) !== kind)
  return alone ? kind : batch.shortName.toLowerCase()
}

const kindOf = ({ shortName }: BatchSummary): string => shortName.replace(/\s*\d+$/, '').toLowerCase()

function cardOf(batch: BatchSummary, nowMs: number): BenchCard {
  const timers = [...batch.timers].sort((a, b) => a.deadlineAtMs - b.deadlineAtMs)
  return {
    batch,
    timer: timers[0] ?? null,
    ringing: timers.filter(({ deadlineAtMs }) => deadlineAtMs <= nowMs),
    moreTimers: Math.max(timers.length - 1, 0),
    parked: batch.stage === 'parked',
  }
}

function urgency(a: BenchCard, b: BenchCard, nowMs: number): number {
  const [rankA, atA] = rank(a, nowMs)
  const [rankB, atB] = rank(b, nowMs)
  return rankA - rankB || atA - atB || (a.batch.id < b.batch.id ? -1 : 1)
}

function rank({ batch, timer, ringing, parked }: BenchCard, nowMs: number): readonly [number, number] {
  if (timer && ringing.length > 0) return [0, timer.deadlineAtMs]
  const sinceMs = overdueSinceMs(batch, nowMs)
  if (sinceMs !== undefined) return [1, sinceMs]
  if (timer) return [2, timer.deadlineAtMs]
  return [parked ? 4 : 3, -batch.touchedAtMs]
}
