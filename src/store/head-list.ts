import type { StreamHead } from '../ports/event-log'
import type { HeadRow } from './schema'

/** Minus the UTC time in ms: local offsets differ, and an index only counts upwards. */
export function orderOf(at: string): number {
  const atMs = Date.parse(at)
  return Number.isNaN(atMs) ? 0 : -atMs
}

/** What others see of a stored row. */
export const toHead = ({ order: _order, sum: _sum, ...head }: HeadRow): StreamHead => head
