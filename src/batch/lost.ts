import type { Micrograms } from '../trade/mass'
import { openDeviations } from './open-deviations'
import { startOf } from './rework-start'
import type { BatchState } from './state'

/**
 * Mass that deviations say is gone, by line. *all*: since it was lost. *planned-for*: of those whose way on puts in as
 * much again, so that the targets, which tell what goes in, hold it as well. A rework starts without what was lost before.
 */
export function lossesOf(state: BatchState, which: 'all' | 'planned-for'): ReadonlyMap<string, Micrograms> {
  const gone = new Map<string, Micrograms>()
  const part = state.parts.at(-1)
  const before = part && startOf(state, part).deviations
  for (const { id, lost = [], settled } of state.deviations.values()) {
    if (settled?.how === 'struck out' || before?.has(id)) continue
    if (which === 'planned-for' && (settled === undefined || settled.how === 'discard')) continue
    for (const { line, massUg } of lost) gone.set(line, (gone.get(line) ?? 0) + massUg)
  }
  return gone
}

/** What can still be taken out of a cup again is not in the batch yet. */
export const looseUg = (state: BatchState, line: string): Micrograms =>
  openDeviations(state)
    .filter((each) => each.line === line && each.inCup && each.direction === 'over' && each.cause !== 'lot')
    .reduce((sum, { byUg }) => sum + byUg, 0)

/** Foreign mass that was decided on, or that was too little to decide on: part of the plan since. */
export function isPlannedFor(state: BatchState, component: string): boolean {
  return openDeviations(state).every((each) => each.line !== component)
}
