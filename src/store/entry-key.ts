import type { Event } from '../batch/event'

/** The key of an entry: [stream, replica, n]. */
export const keyOf = (event: Event): [string, string, number] => [event.stream, event.replica, event.n]

/** All keys of one stream. */
export const ofStream = (stream: string): IDBKeyRange => IDBKeyRange.bound([stream], [stream, []])
