import type { Micrograms } from '../trade/mass'
import type { InstrumentCheck } from './kinds'
import { entriesOf, type Stamp } from './record-entries'
import type { BatchState } from './state'

/** What the batch was made with, and what instruments showed before use. */
export interface Equipment {
  readonly checks: readonly (Stamp & { readonly check: InstrumentCheck; readonly good: boolean })[]
  readonly vessels: readonly {
    readonly id: string
    readonly name: string
    readonly tareUg?: Micrograms
    readonly standsIn?: string
  }[]
  /** Balances with what was weighed on each. */
  readonly balances: readonly {
    readonly name: string
    readonly stepUg: Micrograms
    readonly lines: readonly string[]
  }[]
  /** Tools of the mixing steps that were done. */
  readonly tools: readonly string[]
}

export function equipmentOf(state: BatchState, initialsOf: (id: string) => string): Equipment {
  return {
    checks: entriesOf(state, 'instrument-checked', initialsOf)
      .filter(({ struck }) => struck === undefined)
      .map(({ event, struck: _none, ...stamp }) => ({
        ...stamp,
        check: event.body.instrument,
        good: event.body.good,
      })),
    vessels: [...state.plan.vessels.values()].map((vessel) => {
      const tareUg = state.vessels.get(vessel.id)?.tareUg
      return {
        id: vessel.id,
        name: vessel.name,
        ...(tareUg === undefined ? {} : { tareUg }),
        ...(vessel.standsIn === undefined ? {} : { standsIn: vessel.standsIn }),
      }
    }),
    balances: balancesOf(state),
    tools: [
      ...new Set(
        state.plan.steps.flatMap(({ id, step }) =>
          step.kind === 'mix' && state.steps.get(id)?.finished?.how === 'done' ? [step.tool] : [],
        ),
      ),
    ],
  }
}

function balancesOf(state: BatchState): Equipment['balances'] {
  const linesOf = new Map<string, Set<string>>()
  const weighed = [...entriesOf(state, 'weighed', (id) => id), ...entriesOf(state, 'adjusted', (id) => id)]
  for (const { event, struck } of weighed) {
    const planned = state.plan.lines.get(event.body.line)
    const id = event.body.balance ?? planned?.balance.id
    if (struck || id === undefined || planned === undefined) continue
    linesOf.set(id, (linesOf.get(id) ?? new Set()).add(planned.material.name))
  }
  return state.header.balances.flatMap(({ id, name, stepUg }) => {
    const lines = linesOf.get(id)
    return lines === undefined ? [] : [{ name, stepUg, lines: [...lines] }]
  })
}
