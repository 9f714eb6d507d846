import { signal } from '@preact/signals'
import catalogue from '../../../../demo-data/catalogue.json' with { type: 'json' }
import type { App } from '../../../../src/app/app.ts'
import { createBatches } from '../../../../src/app/batches.ts'
import type { Route } from '../../../../src/app/routes.ts'
import type { Balance, KeptVessel, Lot, Material, Person } from '../../../../src/batch/catalogue.ts'
import type { Formula } from '../../../../src/batch/formula.ts'
import { silentAlarm } from '../../../../src/devices/alarm/silent-alarm.ts'
import { simulatedAwake } from '../../../../src/devices/awake/simulated-awake.ts'
import { manualClock } from '../../../../src/devices/clock/manual-clock.ts'
import { countingIds } from '../../../../src/devices/ids/counting-ids.ts'
import { memoryStore } from '../../../../src/store/memory-store.ts'

const byId = <T extends { readonly id: string }>(all: readonly T[]) => new Map(all.map((each) => [each.id, each]))

/**
 * The invented studio on 25 November 2026, with every lot as it was received unless `onHand` says otherwise, and the
 * formulas as `change` leaves them.
 */
export function startApp(
  onHand: Readonly<Record<string, number>> = {},
  change: (formula: Formula) => Formula = (formula) => formula,
) {
  // Its shape is checked by the import's own tests; JSON types know no unions.
  const house = catalogue as unknown as {
    readonly materials: Material[]
    readonly lots: Lot[]
    readonly formulas: Formula[]
    readonly people: Person[]
    readonly balances: Balance[]
    readonly vessels: KeptVessel[]
  }
  const store = memoryStore('r1')
  const clock = manualClock(Date.UTC(2026, 10, 25, 9))
  const ids = countingIds()
  const alarm = silentAlarm()
  const went: Route[] = []
  const batches = createBatches({ log: store.log, writer: { replica: () => 'r1', clock, ids } })
  const stock = new Map(house.lots.map((lot) => [lot.id, onHand[lot.id] ?? lot.receivedUg]))
  const app = {
    nowMs: signal(clock.nowMs()),
    clock,
    ids,
    drafts: store.drafts,
    alarm,
    awake: simulatedAwake(),
    batches,
    go: (to: Route) => went.push(to),
    settings: { decimalMark: signal('.'), person: signal(house.people[0] ?? null), value: signal({ currency: '£' }) },
    catalogue: {
      loaded: signal(true),
      materials: signal(byId(house.materials)),
      lots: signal(byId(house.lots)),
      formulas: signal(byId(house.formulas.map(change))),
      people: signal(byId(house.people)),
      balances: signal(byId(house.balances)),
      vessels: signal(byId(house.vessels)),
      onHand: async () => stock,
    },
  }
  // Start uses nothing else of the app.
  return { app: app as unknown as App, store, alarm, went, house }
}

/** Lets what was promised arrive. */
export const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))
