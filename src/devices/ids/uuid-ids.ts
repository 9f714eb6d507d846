import type { Ids } from '../../ports/ids'

/** The counter has 12 bits; it begins in its lower half, so that there is room to count on within a millisecond. */
const mostCount = 0xfff
const firstCounts = 0x7ff

/**
 * Ids that sort by the time they were made, and never repeat or go back within a page, whatever the clock does: UUIDs
 * of version 7 with a counter in rand_a (RFC 9562, 5.7 and 6.2 method 1) and 62 random bits.
 */
export const uuidIds = (nowMs: () => number = Date.now): Ids => {
  let lastMs = 0
  let count = 0
  return {
    next: () => {
      const [first = 0, second = 0, third = 0] = crypto.getRandomValues(new Uint32Array(3))
      const wallMs = nowMs()
      if (wallMs > lastMs) {
        lastMs = wallMs
        count = third & firstCounts
      } else if (count < mostCount) count += 1
      else {
        lastMs += 1
        count = 0
      }
      const time = hex(lastMs, 12)
      const variant = 0x80000000 + (first & 0x3fffffff)
      const random = hex(variant, 8) + hex(second, 8)
      return `${time.slice(0, 8)}-${time.slice(8)}-7${hex(count, 3)}-${random.slice(0, 4)}-${random.slice(4)}`
    },
  }
}

const hex = (value: number, digits: number): string => value.toString(16).padStart(digits, '0')
