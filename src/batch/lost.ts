import type { Micrograms } from '../trade/mass'
import { openDeviations } from './losses'
import type { BatchState } from './state'

/**
 * Mass that deviations say is gone, by line. *all*: since it was lost. *planned-for*: of those whose way on puts in as
 * much again, so that the targets, which tell what goes in, hold it as well.
 */
export function lossesOf(state: BatchState, which: 'all' | 'planned-for'): ReadonlyMap<string, Micrograms> {
  const gone = new Map<string, Micrograms>()
  for (const { lost = [], settled } of state.deviations.values()) {
    if (settled?.how === 'struck out') continue
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
