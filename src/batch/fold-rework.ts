import { enter } from './fold-mass'
import { freshStep, freshVessel } from './fresh-step'
import type { BatchEvent } from './kinds'
import type { PlannedStep } from './plan'
import { isDone } from './progress'
import type { BatchState } from './state'

type Reworked = Extract<BatchEvent, { kind: 'reworked' }>

/**
 * Opens the batch again with the steps of a rework, one after the other. What it adds is weighed in steps like those of
 * the formula, so that targets, bands, gates and ways on are the same. What was left open before stays left.
 */
export function reworked(state: BatchState, event: Reworked, atMs: number): void {
  const { part, returned, steps, cups = [] } = event.body
  for (const [id, step] of state.steps)
    if (!isDone(state, id)) step.finished = { atMs, how: 'skipped', note: wasLeftOpen }
  if (returned) enter(state, event.id, { kind: 'return', to: returned.vessel, massUg: returned.massUg })
  const { plan, totalUg } = state
  const phase = phaseOf(part)
  const ids = steps.map(({ id }) => id)
  const lines = new Map(plan.lines)
  const added = steps.map((step, at): PlannedStep => {
    const { id } = step
    if (step.kind === 'add' && step.beside) lines.set(id, step.beside)
    const line = lines.get(('line' in step && step.line) || id)
    const placed = { id, index: plan.steps.length + at, waitsFor: ids.slice(0, at), part, ...(line && { line }) }
    if (step.kind !== 'add') return { ...placed, step }
    state.totalUg += step.massUg
    return { ...placed, step: { ...step, kind: 'weigh', line: step.line ?? id }, targetUg: step.massUg }
  })
  if (state.totalUg !== totalUg) state.totalWas.push(totalUg)
  // No more is held back from here on: what the rework adds, it asks for.
  state.heldBackUg = 0
  const all = [...plan.steps, ...added]
  state.plan = {
    ...plan,
    steps: all,
    byId: new Map(all.map((each) => [each.id, each])),
    lines,
    vessels: new Map([...plan.vessels, ...cups.map((cup) => [cup.id, cup] as const)]),
    phases: [...plan.phases, { letter: phase, name: phase }],
  }
  for (const { id, targetUg } of added) state.steps.set(id, freshStep(id, targetUg))
  for (const { id } of cups) state.vessels.set(id, freshVessel(id))
  state.parts = [...state.parts, { n: part, entry: event.id, atMs, steps: ids, readBefore: state.measurements.length }]
  state.stage = 'in-hand'
  delete state.decision
}

/** Why what nobody did, or decided on, before a batch was closed is left. */
export const wasLeftOpen = 'left open when the batch was closed'

/** What the steps of a rework stand under, in the ladder and in the record. */
export const phaseOf = (part: number): string => `Rework ${part}`
