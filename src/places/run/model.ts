import { batch, effect, signal, untracked } from '@preact/signals'
import type { App, BatchHandle } from '../../app/app'
import type { Refusal } from '../../app/refusals'
import type { Intention } from '../../batch/intention'
import type { BatchState } from '../../batch/state'
import { formatMass } from '../../trade/mass'
import { createFrameBehind } from './a-frame-behind'
import type { ActsWorld, ActWords } from './acts'
import { createBusy } from './busy'
import { createDraftBook, typedAfter } from './draft'
import { firstStep } from './first-step'
import type { AwakeState, OpenSheet, RunModel } from './run-model'
import { createRunSignals } from './run-signals'
import { keepingPlace } from './step-in-hand'
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
  let loading: ReturnType<typeof loadActs> | undefined
  const acts = () => {
    loading ??= loadActs()
    return loading
  }

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
  const act = async (intention: Intention, words: ActWords = {}): Promise<boolean> => {
    behind.flush()
    busy.begin()
    refusal.value = null
    const from = stepId.peek()
    const { actIn } = await acts().catch((error: unknown) => {
      busy.end()
      throw error
    })
    return actIn(world, intention, { ...words, from })
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
      { done: `${weighing.planned.material.name} ${shown} g`, taken: () => drafts.clear(id, draft) },
    )
  }
  const settle = async (shown?: string): Promise<boolean> => {
    const id = stepId.peek()
    const open = signals.deviation.peek()?.id
    if (open === undefined || id === null || busy.now()) return false
    return (await acts()).settleDeviation(world, { id, open, shown })
  }
  const world: ActsWorld = {
    app,
    handle,
    drafts,
    reckoner,
    refusal,
    stepId,
    busy,
    behind,
    stateNow,
    show,
    take,
    act,
  }
  void app.calm.then(acts)

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
    act: (intention, done) => act(intention, { done }),
    record,
    strike: (entry, reason) => act({ do: 'strike', entry, reason }),
    settle,
    retry: async () => (await acts()).retryUnsaved(world),
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
      app.awake.release()
    },
  }
}

/** What a person does needs more than showing the step does. */
const loadActs = () => import('./acts')

const waitsUnsaved = (handle: BatchHandle, stepId: string): boolean =>
  handle.unsaved.peek().some(({ intention }) => 'step' in intention && intention.step === stepId)
