import { computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { Alarm } from '../ports/alarm'
import type { Archive } from '../ports/archive'
import type { Awake } from '../ports/awake'
import type { Badge } from '../ports/badge'
import type { Clock } from '../ports/clock'
import type { DeviceKeys } from '../ports/device-keys'
import type { Drafts, EventLog, HealReport } from '../ports/event-log'
import type { Ids } from '../ports/ids'
import type { Pictures } from '../ports/pictures'
import type { Share } from '../ports/share'
import type { SlowHash } from '../ports/slow-hash'
import type { Upkeep } from '../ports/upkeep'
import { afterPaint, whenIdle } from './after-paint'
import type { App, JustDone, UpdateModel } from './app'
import { type BatchesWorld, createBatches } from './batches'
import { createCatalogue } from './catalogue'
import { lateBells } from './late-bells'
import { loadAfterFirst } from './load-after-first'
import { oneAtATime } from './one-at-a-time'
import { pause } from './pause'
import type { Refusal } from './refusals'
import { createRouter } from './routes'
import { createSettings } from './settings'

/** The concrete stores and devices, as the composition root hands them in. */
export interface Parts {
  readonly log: EventLog
  readonly drafts: Drafts
  readonly archive: () => Promise<Archive>
  readonly clock: Clock
  readonly ids: Ids
  readonly alarm: Alarm
  readonly awake: Awake
  readonly badge: Badge
  readonly share: Share
  readonly upkeep: Upkeep
  readonly slowHash: () => Promise<SlowHash>
  readonly deviceKeys: () => Promise<DeviceKeys>
  readonly pictures: () => Promise<Pictures>
  readonly update: UpdateModel
  readonly window: Window
  readonly loadDemonstration: (app: App) => Promise<Refusal | null>
}

export interface StartedApp extends App {
  /** Resolves once the bench can be shown; what is not needed for it goes on behind. */
  readonly started: Promise<void>
  /** To be called when the first screen has been rendered. */
  readonly isShown: () => void
}

/** Copies that take longer to compare are not waited for. */
const longestCompareMs = 2_000

/** A formula that only the demonstration brings. */
const demonstrationFormula = 'formula-lotion'

/** Puts the app together and starts it. */
export function createApp(parts: Parts): StartedApp {
  const { log, clock, ids, window } = parts
  const writer: BatchesWorld['writer'] = { replica: () => log.replica, clock, ids }
  const nowMs = tickingClock(clock, window)
  let isShown = (): void => {}
  const shown = new Promise<void>((resolve) => {
    isShown = () => void afterPaint().then(resolve)
  })
  const compared = shown.then(() => Promise.race([log.ready(), pause(longestCompareMs)]))
  const calm = compared.then(whenIdle)
  const { route, go } = createRouter(window)
  const catalogue = createCatalogue({ log, writer, by: () => settings.value.value.person || 'nobody' })
  const settings = createSettings({
    log,
    writer,
    people: catalogue.people,
    root: window.document.documentElement,
    early: window.localStorage,
    calm,
  })
  const batches = createBatches({ ...parts, writer })
  const storage = signal(log.state())
  const heals = signal<readonly HealReport[]>([])
  log.onState((state) => {
    storage.value = state
  })
  log.onHealed((report) => {
    heals.value = [...heals.value, report]
    void batches.load()
    void catalogue.load()
    void settings.load()
  })

  const app: App = {
    ...parts,
    route,
    go,
    nowMs,
    settings,
    catalogue,
    batches,
    storage,
    heals,
    bells: lateBells(
      shown.then(async () => {
        const { createBells } = await loadAfterFirst()
        return createBells({ batches, nowMs, alarm: parts.alarm, badge: parts.badge })
      }),
    ),
    justDone: signal<JustDone | null>(null),
    loadDemonstration: () => parts.loadDemonstration(app),
    hasDemonstration: computed(() => catalogue.formulas.value.has(demonstrationFormula)),
    calm,
  }

  window.addEventListener('pointerdown', () => parts.alarm.unlock())
  window.addEventListener('keydown', () => parts.alarm.unlock())
  const started = Promise.all([batches.load(), settings.load()]).then(() => undefined)
  void shown.then(() => {
    clock.onJump(({ fromMs, toMs, maybeSlept }) => {
      if (maybeSlept) return
      for (const handle of batches.openOnes()) {
        const { stage } = handle.view.peek().state
        if (stage === 'in-hand' || stage === 'parked') void handle.intend({ do: 'notice-clock', byMs: toMs - fromMs })
      }
    })
  })
  // Who has a batch in hand looks at that first; an empty bench says more once it knows what there is.
  void started.then(() => (batches.inHand.peek().length > 0 ? compared : shown)).then(() => catalogue.load())
  const decideHeld = oneAtATime(batches.decideHeld)
  void log.ready().then(decideHeld)
  decideHeldWhenBack(log, storage, decideHeld)
  return { ...app, started, isShown }
}

/** A signal of the wall clock that moves every second, and at once when the page comes back. */
function tickingClock(clock: Clock, window: Window): ReadonlySignal<number> {
  const nowMs = signal(clock.nowMs())
  const tick = (): void => {
    nowMs.value = clock.nowMs()
  }
  window.setInterval(tick, 1000)
  window.document.addEventListener('visibilitychange', tick)
  window.addEventListener('pageshow', tick)
  return nowMs
}

/** What was held while the database was dead is decided when it opens again. */
function decideHeldWhenBack(
  log: EventLog,
  storage: ReadonlySignal<ReturnType<EventLog['state']>>,
  decideHeld: () => void,
): void {
  let wasOpen = log.state().database === 'open'
  effect(() => {
    const open = storage.value.database === 'open'
    if (open && !wasOpen) decideHeld()
    wasOpen = open
  })
}
