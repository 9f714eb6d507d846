import { batch, effect, signal, untracked } from '@preact/signals'
import { afterPaint } from '../../app/after-paint'
import type { App, BatchHandle } from '../../app/app'
import type { Refusal } from '../../app/refusals'
import type { Intention } from '../../batch/intention'
import type { PlannedStep } from '../../batch/plan'
import { isDone, nextStep, statusOf } from '../../batch/progress'
import type { BatchState } from '../../batch/state'
import { formatMass } from '../../trade/mass'
import { createDraftBook } from './draft'
import { strikableOf } from './entries'
import type { AwakeState, OpenSheet, RunModel } from './run-model'
import { createRunSignals } from './run-signals'
import { keepStep } from './step-in-hand'
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
  const busy = signal(false)
  const signals = createRunSignals(app, handle, stepId, drafts, reckoner)
  const stateNow = (): BatchState => handle.view.peek().state

  const show = (id: string | null) =>
    batch(() => {
      if (id !== stepId.peek()) refusal.value = null
      stepId.value = id
      activeField.value = id !== null && drafts.of(id).mode === 'by-difference' ? 'before' : 'reading'
    })
  const take = (id: string) => {
    show(id)
    app.go({ place: 'run', batch: handle.id, step: id })
  }
  /** The step is shown first; where to come back to is noted when it stands on the screen. */
  const takeNext = (id: string | null) => {
    show(id)
    void afterPaint().then(() => {
      if (id !== null && stepId.peek() === id) app.go({ place: 'run', batch: handle.id, step: id })
    })
  }
  /** On from a step that is done: the next one after it that can be worked on, else whatever waits. */
  const moveOn = (from: string) => {
    if (!isDone(stateNow(), from)) return
    const following = followingStep(stateNow(), from) ?? nextStep(stateNow())
    takeNext(following?.id ?? null)
  }
  const act = async (intention: Intention, done?: string, taken?: () => void): Promise<boolean> => {
    const from = stepId.peek()
    const follow = (ids: readonly string[]) => {
      busy.value = false
      taken?.()
      const entries = strikableOf(stateNow(), ids)
      if (done !== undefined && entries.length > 0)
        app.justDone.value = { text: done, atMs: app.clock.nowMs(), undo: undo(entries, from) }
      const noticed = noticedBy(stateNow(), ids)
      if (noticed !== undefined) take(noticed)
      else if (from !== null && stepId.peek() === from) moveOn(from)
    }
    let drawn = false
    batch(() => {
      busy.value = true
      refusal.value = null
    })
    const recorded = (ids: readonly string[]) => {
      drawn = true
      follow(ids)
    }
    const outcome = await handle.intend(intention, recorded).finally(() => {
      busy.value = false
    })
    if (!outcome.ok) {
      // What could not be saved has its own bar, and stays typed as well: the screen is then its only copy.
      const isKept = handle.unsaved.peek().some((each) => each.intention === intention)
      if (!isKept) refusal.value = outcome.refusal
      return false
    }
    // What was held, or left nothing to write, did not change the batch.
    if (!drawn) batch(() => follow(outcome.entries))
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
    const id = stepId.peek()
    const weighing = signals.weighing.peek()
    const net = signals.net.peek()
    if (id === null || weighing === null || net.kind !== 'net' || busy.peek() || waitsUnsaved(handle, id)) return false
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
    const open = signals.deviation.peek()
    if (open === null || id === null || busy.peek()) return false
    const [{ deviationPanel, intentionOfWay }, { offersNow }] = await Promise.all([
      import('./deviation-model'),
      import('./deviation-offers'),
    ])
    const panel = deviationPanel(stateNow(), id, drafts.of(id), await offersNow(app, stateNow(), open.id))
    if (panel === null) return false
    // Stock or room may have gone since it was shown.
    if (shown !== undefined && panel.chosen?.kind !== shown) {
      refusal.value = { code: 'REMEDY_IMPOSSIBLE' }
      return false
    }
    const draft = drafts.of(id)
    const intention = intentionOfWay(panel, stateNow(), id, draft, reckoner)
    return intention !== null && act(intention, undefined, () => drafts.clear(id, draft))
  }
  const retry = async (): Promise<void> => {
    const waited = handle.unsaved.peek().map(({ intention }) => intention)
    await handle.retry()
    const left = new Set(handle.unsaved.peek().map(({ intention }) => intention))
    for (const intention of waited) {
      if (left.has(intention) || !('step' in intention) || intention.step === undefined) continue
      drafts.clear(intention.step, drafts.of(intention.step))
      if (intention.step === stepId.peek()) moveOn(intention.step)
    }
  }

  const keep = effect(() => {
    const id = stepId.value
    void afterPaint().then(() => id === stepId.peek() && keepStep(app.drafts, handle.id, id))
  })
  const follow = effect(() => {
    const route = app.route.value
    if (route.place !== 'run' || route.batch !== handle.id || route.step === undefined) return
    const { step } = route
    if (stateNow().plan.byId.has(step) && step !== stepId.peek()) untracked(() => show(step))
  })
  app.awake.keep()
  const stopWatching = app.awake.onChange((now) => {
    awake.value = now
  })

  return {
    app,
    handle,
    drafts,
    reckoner,
    activeField,
    sheet,
    refusal,
    awake,
    busy,
    ...signals,
    take,
    act,
    record,
    strike,
    settle,
    retry,
    step: (by) => {
      const at = signals.planned.peek()?.index
      const next = at === undefined ? undefined : stateNow().plan.steps[at + by]
      if (next) take(next.id)
    },
    type: (field, text) => {
      const id = stepId.peek()
      refusal.value = null
      if (id !== null) drafts.setField(id, field, text)
    },
    setMode: (mode) => {
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

/** The step that the address names, else the one that was in hand and is not done, else what is to be done next. */
const firstStep = (app: App, handle: BatchHandle, lastStep: string | null): string | null => {
  const route = app.route.peek()
  const { state } = handle.view.peek()
  const asked = route.place === 'run' && route.batch === handle.id ? route.step : undefined
  if (asked !== undefined && state.plan.byId.has(asked)) return asked
  if (lastStep !== null && state.plan.byId.has(lastStep) && !isDone(state, lastStep)) return lastStep
  return nextStep(state)?.id ?? null
}

/** The step at which something that these entries led to waits for a way on. */
const noticedBy = (state: BatchState, entries: readonly string[]): string | undefined =>
  [...state.deviations.values()].find((each) => !each.settled && each.cause && entries.includes(each.entry))?.step

const workable = new Set(['open', 'part', 'over'])

/** The other weighings of its phase first, since one stands at the balance; then the next in the plan. */
const followingStep = (state: BatchState, doneId: string): PlannedStep | undefined => {
  const done = state.plan.byId.get(doneId)
  if (done === undefined) return undefined
  const open = state.plan.steps.filter(({ id }) => workable.has(statusOf(state, id)))
  const after = open.filter(({ index }) => index > done.index)
  const isNeighbour = ({ step }: PlannedStep) => step.kind === 'weigh' && step.phase === done.step.phase
  return after.find(isNeighbour) ?? open.find(isNeighbour) ?? after[0]
}

const waitsUnsaved = (handle: BatchHandle, stepId: string): boolean =>
  handle.unsaved.peek().some(({ intention }) => 'step' in intention && intention.step === stepId)
