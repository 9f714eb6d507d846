import { signal } from '@preact/signals'
import type { App, BatchHandle } from '../../../../src/app/app'
import type { KeptHandle } from '../../../../src/app/live-batch'
import type { Route } from '../../../../src/app/routes'
import type { BatchHeader } from '../../../../src/batch/header'
import { simulatedAwake } from '../../../../src/devices/awake/simulated-awake'
import { createRunModel } from '../../../../src/places/run/model'
import type { RunModel } from '../../../../src/places/run/run-model'
import { openWorld, type World } from '../../../support/app-world'
import { lotionHeader } from '../../../support/formulas'

export interface RunWorld extends World {
  readonly app: App
  readonly handle: BatchHandle
  readonly run: RunModel
  readonly went: Route[]
  /** A second visit to the same batch over the same store, as after a reload. */
  readonly comeBack: (step?: string) => RunModel
}

/** A batch of the demonstration lotion on the screen, over the in-memory twin of the store. */
export async function openRun(header: BatchHeader = lotionHeader()): Promise<RunWorld> {
  const world = openWorld()
  await world.batches.start({ do: 'open', header, preflight: [] }, [])
  const handle = (await world.batches.open(header.id)) as KeptHandle
  const went: Route[] = []
  const route = signal<Route>({ place: 'run', batch: header.id })
  // The run uses nothing else of the app.
  const app = {
    route,
    go: (to: Route) => {
      went.push(to)
      route.value = to
    },
    nowMs: signal(world.clock.nowMs()),
    clock: world.clock,
    drafts: world.store.drafts,
    awake: simulatedAwake(),
    batches: world.batches,
    bells: { ringing: signal([]), stop: async () => {} },
    settings: { decimalMark: signal('.') },
    justDone: signal(null),
    calm: Promise.resolve(),
    catalogue: { onHand: async () => new Map() },
  } as unknown as App
  const comeBack = (step?: string) => {
    route.value = { place: 'run', batch: header.id, ...(step === undefined ? {} : { step }) }
    return createRunModel(app, handle)
  }
  return { ...world, app, handle, went, comeBack, run: createRunModel(app, handle) }
}

/** Lets what was promised arrive. */
export const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))

/** Types a reading for the step in hand and records it. */
export async function weigh(run: RunModel, text: string): Promise<boolean> {
  run.type('reading', text)
  return run.record()
}
