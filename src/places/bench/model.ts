import { computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import type { LastInHand } from '../../app/last-in-hand'
import type { Refusal } from '../../app/refusals'
import type { BatchSummary } from '../../batch/summary'
import { checksToday, type TodayCheck } from './checks'
import { type BenchCard, benchCards } from './order'

export interface BenchModel {
  readonly cards: ReadonlySignal<readonly BenchCard[]>
  readonly checks: ReadonlySignal<readonly TodayCheck[]>
  /** `unknown` until the catalogue is read; `first` before there is anything at all. */
  readonly mood: ReadonlySignal<'unknown' | 'first' | 'idle' | 'busy'>
  readonly loading: ReadonlySignal<boolean>
  readonly refusal: ReadonlySignal<Refusal | null>
  /** Opens the batch; what rings in it falls silent. */
  readonly goTo: (card: BenchCard) => void
  readonly loadDemonstration: () => Promise<void>
  readonly dispose: () => void
}

const minuteMs = 60_000
const dayMs = 86_400_000
/** How many finished batches are looked at for checks that are due; older ones stand in Records. */
const recentBatches = 40

/** Reads summaries only, never a log: the bench must show at once however many batches there are. */
export function createBenchModel(app: App): BenchModel {
  const recent = signal<readonly BatchSummary[]>([])
  const last = signal<ReadonlyMap<string, LastInHand>>(new Map())
  const loading = signal(false)
  const refusal = signal<Refusal | null>(null)
  const all = computed(() => {
    const inHand = app.batches.inHand.value
    const open = new Set(inHand.map(({ id }) => id))
    return [...inHand, ...recent.value.filter(({ id }) => !open.has(id))]
  })
  const minute = computed(() => Math.floor(app.nowMs.value / minuteMs) * minuteMs)
  const stop = effect(() => {
    const inHand = app.batches.inHand.value
    void import('../../app/last-in-hand').then(async ({ readLast }) => {
      last.value = await readLast(app.drafts, inHand)
    })
    void app.batches.finished(recentBatches).then((rows) => {
      recent.value = rows
    })
  })
  return {
    cards: computed(() => {
      const named = app.batches.inHand.value.map((batch) => {
        const next = last.value.get(batch.id)
        return next?.done === batch.done ? { ...batch, next } : batch
      })
      return benchCards(named, app.nowMs.value)
    }),
    checks: computed(() =>
      checksToday({
        batches: all.value,
        balances: [...app.catalogue.balances.value.values()],
        hasWork: all.value.length > 0,
        lastBackupAtMs: momentOf(app.settings.value.value.lastBackupAt),
        nowMs: minute.value,
        dayEndsMs: endOfDayMs(minute.value, app.clock.offsetMinutes()),
      }),
    ),
    mood: computed(() => {
      if (app.batches.inHand.value.length > 0) return 'busy'
      if (!app.catalogue.loaded.value) return 'unknown'
      return app.catalogue.formulas.value.size > 0 ? 'idle' : 'first'
    }),
    loading,
    refusal,
    goTo: (card) => {
      app.alarm.unlock()
      const { id, next } = card.batch
      app.go({ place: 'run', batch: id, step: next?.step })
      if (card.ringing.length > 0) void silence(app, card.batch.id)
    },
    loadDemonstration: async () => {
      if (loading.value) return
      loading.value = true
      refusal.value = await app.loadDemonstration()
      loading.value = false
    },
    dispose: stop,
  }
}

async function silence(app: App, batch: string): Promise<void> {
  for (const bell of app.bells.ringing.value.filter((each) => each.batch === batch)) await app.bells.stop(bell)
}

const momentOf = (iso: string | undefined): number | null => (iso === undefined ? null : Date.parse(iso))

/** Midnight that ends the local day, ms UTC. */
function endOfDayMs(nowMs: number, offsetMinutes: number): number {
  const localMs = nowMs + offsetMinutes * minuteMs
  return (Math.floor(localMs / dayMs) + 1) * dayMs - offsetMinutes * minuteMs
}
