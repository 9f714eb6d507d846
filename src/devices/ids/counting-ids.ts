import type { Ids } from '../../ports/ids'

/** Well-formed uuidv7s that count: 00000000-0000-7000-8000-000000000001 and on. */
export const countingIds = (): Ids => {
  let count = 0
  return {
    next: () => {
      count += 1
      return `00000000-0000-7000-8000-${count.toString(16).padStart(12, '0')}`
    },
  }
}
