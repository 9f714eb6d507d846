import type { Badge } from '../../ports/badge'

/** Keeps the count where a test can read it. */
export const rememberingBadge = (): Badge & { readonly count: number } => {
  let shown = 0
  return {
    show: (count) => {
      shown = count
    },
    get count() {
      return shown
    },
  }
}
