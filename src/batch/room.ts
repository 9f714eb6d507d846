import type { BatchState } from './state'

/** The line that makes up to 100 %. */
export const qsLineOf = (state: BatchState): string | undefined =>
  [...state.plan.lines].find(([, planned]) => planned.line.amount.kind === 'qs')?.[0]
