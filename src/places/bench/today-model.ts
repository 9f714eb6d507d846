import { computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { backupSight } from '../../app/backup/backup-due'
import { followEntries } from '../../app/backup/count-entries'
import type { BatchSummary } from '../../batch/summary'
import { checksToday, type TodayCheck } from './checks'

export interface TodayModel {
  readonly checks: ReadonlySignal<readonly TodayCheck[]>
  readonly dispose: () => void
}

const minuteMs = 60_000
const dayMs = 86_400_000
/** How many finished batches are looked at for checks that are due; older ones stand in Records. */
const recentBatches = 40

/** What is due today, read off summaries once the first screen stands. */
export function createTodayModel(app: App): TodayModel {
  const recent = signal<readonly BatchSummary[]>([])
  const count = followEntries(app)
  const all = computed(() => {
    const inHand = app.batches.inHand.value
    const open = new Set(inHand.map(({ id }) => id))
    return [...inHand, ...recent.value.filter(({ id }) => !open.has(id))]
  })
  const minute = computed(() => Math.floor(app.nowMs.value / minuteMs) * minuteMs)
  const stop = effect(() => {
    app.batches.inHand.value
    void app.batches.finished(recentBatches).then((rows) => {
      recent.value = rows
    })
  })
  return {
    checks: computed(() =>
      checksToday({
        batches: all.value,
        balances: [...app.catalogue.balances.value.values()],
        hasWork: all.value.length > 0,
        backup: backupSight(app.settings.value.value, count.entries.value, minute.value),
        nowMs: minute.value,
        dayEndsMs: endOfDayMs(minute.value, app.clock.offsetMinutes()),
      }),
    ),
    dispose: () => {
      stop()
      count.dispose()
    },
  }
}

/** Midnight that ends the local day, ms UTC. */
function endOfDayMs(nowMs: number, offsetMinutes: number): number {
  const localMs = nowMs + offsetMinutes * minuteMs
  return (Math.floor(localMs / dayMs) + 1) * dayMs - offsetMinutes * minuteMs
}
