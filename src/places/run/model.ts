import { batch, effect, signal, untracked } from '@preact/signals'
import { whenIdle } from '../../app/after-paint'
import type { App, BatchHandle } from '../../app/app'
import type { Refusal } from '../../app/refusals'
import type { Intention } from '../../batch/intention'
import { isDone } from '../../batch/progress'
import type { BatchState } from '../../batch/state'
import { formatMass } from '../../trade/mass'
import { createFrameBehind } from './a-frame-behind'
import { createBusy } from './busy'
import { createDraftBook, typedAfter } from './draft'
import { strikableOf } from './entries'
import type { AwakeState, OpenSheet, RunModel } from './run-model'
import { createRunSignals } from './run-signals'
import { keepingPlace } from './step-in-hand'
import { firstStep, noticedBy, stepAfter } from './steps-that-follow'
import { createReckoner, type Reckoner } from './typed'
import { lotInUse } from './weigh-model'

interface RunOptions {
  readonly reckoner?: Reckoner
  /** The step that was in hand when the batch was last on the screen. */
  readonly lastStep?: string | null
}

/** Made when the place is entered, disposed of when it is left. */
export function createRunModel(app: App, handle: BatchHandle, options: RunOptions = {}): RunModel {
  const { reckoner = createReckoner(), lastStep = null } = options
  const drafts = createDraftBook(app.drafts, handle.id)
  const stepId = signal<string | null>(firstStep(app, handle, lastStep))
  const activeField = signal('reading')
  const refusal = signal<Refusal | null>(null)
  const sheet = signal<OpenSheet | null>(null)
  const awake = signal<AwakeState>('kept')
  const busy = createBusy()
  const behind = createFrameBehind()
  const shown = { ...handle, view: behind.lag(handle.view) }
  const signals = createRunSignals(app, shown, stepId, drafts, reckoner)
  const stateNow = (): BatchState => handle.view.peek().state

  const show = (id: string | null) =>
    batch(() => {
      if (id !== stepId.peek()) refusal.value = null
      stepId.value = id
      activeField.value = id !== null && drafts.of(id).mode === 'by-difference' ? 'before' : 'reading'
    })
  const take = (id: string) => {
    behind.flush()
    show(id)
    app.go({ place: 'run', batch: handle.id, step: id })
  }
  /** The step is shown first; where to come back to is noted when it stands on the screen: an address takes its time. */
  const takeNext = (id: string | null) => {
    show(id)
    void whenIdle().then(() => {
      if (id !== null && stepId.peek() === id && isHere(app, handle))
        app.go({ place: 'run', batch: handle.id, step: id })
    })
  }
  const moveOn = (from: string) => {
    if (!isDone(stateNow(), from)) return
    takeNext(stepAfter(stateNow(), from)?.id ?? null)
  }
  const act = async (intention: Intention, done?: string, taken?: () => void): Promise<boolean> => {
    behind.flush()
    const from = stepId.peek()
    const follow = (ids: readonly string[]) => {
      busy.end()
      taken?.()
      const entries = strikableOf(stateNow(), ids)
      if (done !== undefined && entries.length > 0)
        app.justDone.value = { text: done, atMs: app.clock.nowMs(), undo: undo(entries, from) }
      const noticed = noticedBy(stateNow(), ids)
      if (noticed !== undefined) take(noticed)
      else if (from !== null && stepId.peek() === from) moveOn(from)
    }
    let followed: Promise<void> | undefined
    busy.begin()
    refusal.value = null
    const recorded = (ids: readonly string[]) => {
      followed = behind.after(() => follow(ids))
    }
    const outcome = await handle.intend(intention, recorded).finally(() => followed ?? busy.end())
    if (!outcome.ok) {
      // What could not be saved has its own bar, and stays typed as well: the screen is then its only copy.
      const isKept = handle.unsaved.peek().some((each) => each.intention === intention)
      if (!isKept) refusal.value = outcome.refusal
      return false
    }
    // What was held, or left nothing to write, did not change the batch.
    if (followed === undefined) batch(() => follow(outcome.entries))
    await followed
    return true
  }
  const strike = (entry: string, reason: string) => act({ do: 'strike', entry, reason })
  // Last written, first struck: what came of an earlier entry goes before it.
  const undo = (entries: readonly string[], step: string | null) => async () => {
    app.justDone.value = null
    for (const entry of [...entries].reverse()) await strike(entry, 'undone at once')
    if (step !== null) take(step)
  }
  const record = async (): Promise<boolean> => {
    behind.flush()
    const id = stepId.peek()
    const weighing = signals.weighing.peek()
    const net = signals.net.peek()
    if (id === null || weighing === null || net.kind !== 'net' || busy.now() || waitsUnsaved(handle, id)) return false
    const draft = signals.draft.peek()
    const lot = lotInUse(stateNow(), id, draft)
    const checkedBy = draft.fields.checkedBy
    const shown = formatMass(net.netUg, weighing.stepUg, app.settings.decimalMark.peek())
    return act(
      {
        do: 'weigh',
        step: id,
        reading: net.reading,
        ...(lot === undefined ? {} : { lot }),
        ...(checkedBy ? { checkedBy } : {}),
        source: { kind: 'typed', raw: draft.fields.reading ?? '' },
      },
      `${weighing.planned.material.name} ${shown} g`,
      () => drafts.clear(id, draft),
    )
  }
  const settle = async (shown?: string): Promise<boolean> => {
    const id = stepId.peek()
    const open = signals.deviation.peek()?.id
    if (open === undefined || id === null || busy.now()) return false
    const { settleDeviation } = await import('./late-acts')
    return settleDeviation(world, { id, open, shown })
  }
  const retry = async (): Promise<void> => (await import('./late-acts')).retryUnsaved(world)
  const world = { app, handle, drafts, reckoner, refusal, stepId, stateNow, act, moveOn }

  const place = keepingPlace(app, handle.id, stateNow)
  const keep = effect(() => place.moveTo(stepId.value))
  const follow = effect(() => {
    const route = app.route.value
    if (route.place !== 'run' || route.batch !== handle.id) return place.flush()
    if (route.step === undefined) return
    const { step } = route
    if (stateNow().plan.byId.has(step) && step !== stepId.peek()) untracked(() => show(step))
  })
  app.awake.keep()
  const stopWatching = app.awake.onChange((now) => {
    awake.value = now
  })

  return {
    app,
    handle: shown,
    standing: handle.view,
    drafts,
    reckoner,
    activeField,
    sheet,
    refusal,
    awake,
    saving: busy.shown,
    ...signals,
    take,
    act,
    record,
    strike,
    settle,
    retry,
    step: (by) => {
      behind.flush()
      const at = signals.planned.peek()?.index
      const next = at === undefined ? undefined : stateNow().plan.steps[at + by]
      if (next) take(next.id)
    },
    type: (field, text) => {
      const shown = signals.draft.peek().fields[field] ?? ''
      const fresh = behind.flush() ? typedAfter(shown, text) : text
      const id = stepId.peek()
      refusal.value = null
      if (id !== null) drafts.setField(id, field, fresh)
    },
    setMode: (mode) => {
      behind.flush()
      const id = stepId.peek()
      if (id !== null) drafts.change(id, { mode })
      activeField.value = mode === 'by-difference' ? 'before' : 'reading'
    },
    stopBell: (fact) => app.bells.stop({ ...fact, batchName: fact.batchName ?? '' }),
    dispose: () => {
      follow()
      keep()
      stopWatching()
      signals.dispose()
      app.awake.release()
    },
  }
}

const isHere = (app: App, handle: BatchHandle): boolean => {
  const route = app.route.peek()
  return route.place === 'run' && route.batch === handle.id
}

const waitsUnsaved = (handle: BatchHandle, stepId: string): boolean =>
  handle.unsaved.peek().some(({ intention }) => 'step' in intention && intention.step === stepId)
