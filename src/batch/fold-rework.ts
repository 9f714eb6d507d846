import { post } from '../trade/ledger'
import { freshStep } from './fresh-step'
import type { BatchEvent } from './kinds'
import type { PlannedStep } from './plan'
import { isDone } from './progress'
import type { BatchState } from './state'

/** Opens the batch again with the steps of a rework, one after the other. What was left open before stays left. */
export function reworked(state: BatchState, event: Extract<BatchEvent, { kind: 'reworked' }>, atMs: number): void {
  const { part, returned, steps } = event.body
  for (const [id, step] of state.steps)
    if (!isDone(state, id)) step.finished = { atMs, how: 'skipped', note: 'left open when the batch was closed' }
  const { plan } = state
  const added = steps.map((step, at): PlannedStep => {
    const line = 'line' in step && step.line !== undefined ? plan.lines.get(step.line) : undefined
    const waitsFor = steps.slice(0, at).map(({ id }) => id)
    return { id: step.id, step, index: plan.steps.length + at, waitsFor, part, ...(line ? { line } : {}) }
  })
  const all = [...plan.steps, ...added]
  state.plan = {
    ...plan,
    steps: all,
    byId: new Map(all.map((each) => [each.id, each])),
    phases: [...plan.phases, { letter: phaseOf(part), name: phaseOf(part) }],
  }
  for (const { id } of steps) state.steps.set(id, freshStep(id, undefined))
  const ids = steps.map(({ id }) => id)
  state.parts = [...state.parts, { n: part, entry: event.id, atMs, steps: ids, readBefore: state.measurements.length }]
  state.stage = 'in-hand'
  delete state.decision
  const posted = returned && post(state.ledger, { kind: 'return', to: returned.vessel, massUg: returned.massUg })
  if (posted && !posted.ok) state.doubts.push({ code: 'DOES_NOT_ADD_UP', entry: event.id, why: posted.refusal.code })
}

/** What the steps of a rework stand under, in the ladder and in the record. */
export const phaseOf = (part: number): string => `Rework ${part}`
