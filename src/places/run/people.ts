import type { Person } from '../../batch/catalogue'
import type { BatchState } from '../../batch/state'

/** Everybody who may be at this bench: those of the batch, and those the tablet knows. */
export function peopleOf(state: BatchState, known: ReadonlyMap<string, Person>): readonly Person[] {
  const { performs, checks, others } = state.header.people
  const people = new Map([performs, ...(checks ? [checks] : []), ...others].map((person) => [person.id, person]))
  for (const person of known.values()) if (!person.archived) people.set(person.id, person)
  return [...people.values()]
}

export const personById = (state: BatchState, known: ReadonlyMap<string, Person>, id: string): Person | undefined =>
  known.get(id) ?? peopleOf(state, known).find((person) => person.id === id)
