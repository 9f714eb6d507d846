import { contentsOf } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { lineTargetUg } from './line-targets'
import type { MakeUp } from './make-up'
import { type Limits, limitsOf } from './remedy-limits'
import type { BatchState } from './state'

export type Stands = 'within' | 'under' | 'over'

/** One line of what the vessel holds, as a fraction of it: as it stands, and once the water is in. */
export interface MakeUpRow extends Limits {
  readonly line: string
  readonly name: string
  readonly before: number
  readonly after: number
  readonly was: Stands
  readonly is: Stands
}

/**
 * Composition as made before and after making up, in the order of the formula; strangers last. `addUg` of `line` goes
 * in; what evaporated is gone already.
 */
export function makeUpRows(state: BatchState, makeup: MakeUp, line: string, addUg: Micrograms): readonly MakeUpRow[] {
  const held = new Map(contentsOf(state.ledger, makeup.vessel))
  held.set(line, Math.max(0, (held.get(line) ?? 0) - makeup.lossUg))
  const beforeUg = [...held.values()].reduce((sum, massUg) => sum + massUg, 0)
  const afterUg = beforeUg + addUg
  if (beforeUg === 0) return []
  const rowOf = (id: string, name: string, limits: Limits): MakeUpRow => {
    const massUg = held.get(id) ?? 0
    const before = massUg / beforeUg
    const after = (id === line ? massUg + addUg : massUg) / afterUg
    return { line: id, name, before, after, ...limits, was: standsAt(before, limits), is: standsAt(after, limits) }
  }
  const planned = [...state.plan.lines].map(([id, each]) =>
    rowOf(id, each.material.name, limitsOf(each, lineTargetUg(state, id) / state.totalUg)),
  )
  const strangers = [...state.unplanned]
    .filter(([id]) => held.has(id))
    .map(([id, { body }]) =>
      rowOf(id, body.name, { low: 0, high: body.most ?? 1, from: body.most ? 'use level' : 'none' }),
    )
  return [...planned, ...strangers]
}

/** A millionth of the whole is below what any balance tells. */
const slack = 1e-6

function standsAt(fraction: number, { low, high }: Limits): Stands {
  if (fraction < low - slack) return 'under'
  return fraction > high + slack ? 'over' : 'within'
}
