import { computed, effect, type ReadonlySignal } from '@preact/signals'
import type { Alarm } from '../ports/alarm'
import type { Badge } from '../ports/badge'
import type { Batches, Bell, Bells } from './app'

interface BellsWorld {
  readonly batches: Batches
  readonly nowMs: ReadonlySignal<number>
  readonly alarm: Alarm
  readonly badge: Badge
}

/** Rings for every timer of every batch in hand whose deadline has passed, until somebody stops it. */
export function createBells({ batches, nowMs, alarm, badge }: BellsWorld): Bells & { readonly dispose: () => void } {
  const sounding = new Set<string>()
  // Recomputed every second, but a new list only when the bells themselves change.
  const key = computed(() =>
    dueTimers(batches, nowMs.value)
      .map((bell) => bell.timer)
      .join(),
  )
  const ringing = computed(() => (key.value === '' ? [] : dueTimers(batches, nowMs.peek())))
  const dispose = effect(() => {
    const now = new Set(ringing.value.map((bell) => bell.timer))
    for (const timer of sounding) if (!now.has(timer)) alarm.stop(timer)
    for (const timer of now) if (!sounding.has(timer)) alarm.ring(timer)
    sounding.clear()
    for (const timer of now) sounding.add(timer)
    badge.show(now.size)
  })
  return {
    ringing,
    dispose,
    stop: async ({ batch, timer }) => {
      alarm.stop(timer)
      const handle = await batches.open(batch)
      await handle?.intend({ do: 'acknowledge-timer', timer })
    },
  }
}

const dueTimers = (batches: Batches, atMs: number): readonly Bell[] =>
  batches.inHand.value
    .flatMap((summary) =>
      summary.timers
        .filter((timer) => timer.deadlineAtMs <= atMs)
        .map(({ id, label, deadlineAtMs }) => ({
          batch: summary.id,
          batchName: summary.shortName,
          timer: id,
          label,
          deadlineAtMs,
        })),
    )
    .sort((a, b) => a.deadlineAtMs - b.deadlineAtMs)
