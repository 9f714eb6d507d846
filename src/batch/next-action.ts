import type { PlannedStep } from './plan'
import { openDeviation, statusOf } from './progress'
import type { BatchState } from './state'
import { askOf, lower, titleOf } from './wording'

/** The next action as one imperative, for the bench: "Weigh squalane", "Read the oil beaker's temperature". */
export function nextActionOf(state: BatchState, planned: PlannedStep): string {
  const title = titleOf(planned.step, state.header)
  if (openDeviation(state, planned.id)) return `${title} is over: choose a way on`
  const status = statusOf(state, planned.id)
  switch (planned.step.kind) {
    case 'weigh':
      return status === 'part' ? `Weigh the rest of ${lower(title)}` : `Weigh ${lower(title)}`
    case 'heat':
    case 'cool':
      return `${title} ${askOf(planned.step, state.header)}`
    case 'hydrate':
      return status === 'running' ? `${title}, then look for lumps` : title
    case 'measure':
      return `Measure ${lower(title)}`
    default:
      return title
  }
}
