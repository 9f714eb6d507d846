import type { Event } from '../batch/event'

/** The key of an entry: [stream, replica, n]. */
export const keyOf = (event: Event): [string, string, number] => [event.stream, event.replica, event.n]
