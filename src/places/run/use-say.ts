import { type Format, useFormat } from '../../app/format'
import type { Say } from '../../batch/entry-phrases'
import { wordsOf } from '../../batch/entry-words'
import type { BatchState } from '../../batch/state'
import { nameOfVessel } from '../../batch/vessel-name'
import { titleOf } from '../../batch/wording'
import { personById } from './people'
import { useRun } from './run-context'

/** Names and figures of this batch, as the person at the tablet writes them. */
export function useSay(): Say {
  const run = useRun()
  return sayOf(run.handle.view.value.state, run.app, useFormat())
}

export function sayOf(state: BatchState, app: ReturnType<typeof useRun>['app'], format: Format): Say {
  const say: Say = {
    mass: (massUg) => format.massWithUnit(massUg, massUg % 10_000 === 0 ? 10_000 : 1_000),
    number: (value) => format.number(value),
    percent: (fraction) => format.percent(fraction, 0),
    duration: format.duration,
    person: (id) => personById(state, app.catalogue.people.value, id)?.initials ?? id,
    line: (id) => state.unplanned.get(id)?.body.name ?? state.plan.lines.get(id)?.material.name ?? id,
    step: (id) => {
      const planned = state.plan.byId.get(id)
      return planned ? titleOf(planned.step, state.header) : id
    },
    vessel: (id) => nameOfVessel(state, id),
    lot: (id) => app.catalogue.lots.value.get(id)?.code ?? lotCode(state, id),
    entry: (id) => {
      const found = state.entries.find(({ event }) => event.id === id)
      return found && found.event.kind !== 'struck' ? wordsOf(found.event, say) : null
    },
  }
  return say
}

const lotCode = (state: BatchState, id: string): string => {
  for (const { lots } of state.plan.lines.values()) for (const lot of lots) if (lot.id === id) return lot.code
  return id
}
