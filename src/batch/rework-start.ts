import { contentsOf } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { foldBatch } from './fold'
import { inBatchUg } from './in-batch'
import { isKnown } from './kinds'
import type { BatchState, Part } from './state'

/** How a batch stood when a rework of it began: what is in its vessels then is the plan that it starts from. */
export interface ReworkStart {
  /** In which it is done. */
  readonly vessels: ReadonlySet<string>
  readonly heldUg: ReadonlyMap<string, Micrograms>
  /** What else went in of each component: filled and kept, sampled, left behind, spilled. */
  readonly awayUg: ReadonlyMap<string, Micrograms>
  /** By how much the total that was planned is more than what the vessels hold. */
  readonly apartUg: Micrograms
  /** How many targets each earlier step had been given, and what it had. */
  readonly before: ReadonlyMap<string, { readonly asked: number; readonly countedUg: Micrograms }>
  readonly deviations: ReadonlySet<string>
}

/** Folds the log up to the rework once: how it stood then is nowhere written down. */
export function startOf(state: BatchState, part: Part): ReworkStart {
  const known = starts.get(part)
  if (known !== undefined) return known
  const start = foldedStart(state, part)
  starts.set(part, start)
  return start
}

/** A part is made anew wherever the log before it is folded again. */
const starts = new WeakMap<Part, ReworkStart>()

function foldedStart(state: BatchState, part: Part): ReworkStart {
  const events = state.entries.flatMap(({ event, struck }) => (struck || event.kind === 'struck' ? [] : [event]))
  const at = events.findIndex(({ id }) => id === part.entry)
  const then = foldBatch(events.slice(0, at + 1))
  const opening = events[at]
  const returned = opening && isKnown(opening) && opening.kind === 'reworked' ? opening.body.returned : undefined
  const own = then.plan.steps.filter((step) => step.part === part.n)
  const named = [...own.map(({ step }) => step.vessel), ...(returned ? [returned.vessel] : [])]
  const vessels = new Set(named.filter((id) => then.plan.vessels.get(id)?.kind === 'vessel'))
  const heldUg = new Map<string, Micrograms>()
  const awayUg = new Map<string, Micrograms>()
  for (const component of then.ledger.added.masses.keys()) {
    const massUg = sum([...vessels].map((id) => contentsOf(then.ledger, id).get(component) ?? 0))
    heldUg.set(component, massUg)
    awayUg.set(component, inBatchUg(then, component) - massUg)
  }
  const addedUg = sum(own.map(({ targetUg = 0 }) => targetUg))
  const earlier = [...then.steps].filter(([id]) => !part.steps.includes(id))
  return {
    vessels,
    heldUg,
    awayUg,
    apartUg: then.totalUg - addedUg - sum([...heldUg.values()]),
    before: new Map(earlier.map(([id, { targets, countedUg }]) => [id, { asked: targets.length, countedUg }])),
    deviations: new Set(then.deviations.keys()),
  }
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
