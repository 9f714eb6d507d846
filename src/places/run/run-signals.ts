import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App, BatchHandle } from '../../app/app'
import { loadWriting } from '../../app/load-writing'
import type { gatesOf } from '../../batch/gates'
import { openDeviation } from '../../batch/progress'
import type { DraftBook } from './draft'
import type { RunSignals } from './run-model'
import { checksDueNow, timersOf } from './timers'
import type { Reckoner } from './typed'
import { judgeNet, lastReadingUg, lotInUse, type Net, netTyped, weighingInHand } from './weigh-model'

/** Everything the screen reads of a run. */
export function createRunSignals(
  app: App,
  handle: BatchHandle,
  stepId: ReadonlySignal<string | null>,
  drafts: DraftBook,
  reckoner: Reckoner,
): RunSignals {
  // The state may be grown in place: only the view is new each time, so every computed reads it afresh.
  const state = () => handle.view.value.state
  const draft = computed(() => drafts.of(stepId.value ?? ''))
  const planned = computed(() => state().plan.byId.get(stepId.value ?? '') ?? null)
  const weighing = computed(() => (stepId.value === null ? null : weighingInHand(state(), stepId.value, draft.value)))
  const net = computed((): Net => {
    const asked = weighing.value
    return asked === null ? { kind: 'empty' } : netTyped(draft.value, reckoner, lastReadingUg(state(), asked.vessel))
  })
  const judged = computed(() =>
    weighing.value !== null && net.value.kind === 'net' ? judgeNet(weighing.value, net.value.netUg) : null,
  )
  // The rules come with those of writing: nothing can be recorded before, and `decide` asks them again.
  const rules = signal<{ readonly gatesOf: typeof gatesOf } | null>(null)
  void app.calm.then(loadWriting).then((writing) => {
    rules.value = writing
  })
  const gatesAt = (moment: 'begin' | 'finish') =>
    computed(() => {
      const id = stepId.value
      if (id === null || rules.value === null) return []
      return rules.value.gatesOf(state(), id, app.nowMs.value, moment, lotInUse(state(), id, draft.value))
    })
  return {
    stepId,
    planned,
    draft,
    weighing,
    net,
    judged,
    gates: gatesAt('begin'),
    finishGates: gatesAt('finish'),
    deviation: computed(() => (stepId.value === null ? null : (openDeviation(state(), stepId.value) ?? null))),
    timers: computed(() => timersOf(state(), handle.id, app.batches.inHand.value, app.nowMs.value)),
    checksDue: computed(() => checksDueNow(app.batches.inHand.value, app.nowMs.value)),
  }
}
