import type { DraftItem, DraftPhase, FormulaDraft } from './draft'

/** A line to a place (counted without it) of a phase. In another phase its weighing joins those of that phase. */
export function placeLine(draft: FormulaDraft, id: string, phase: string, at: number): FormulaDraft {
  const from = draft.phases.find(({ lines }) => lines.some((line) => line.id === id))
  const line = from?.lines.find((each) => each.id === id)
  const to = draft.phases.find((each) => each.id === phase)
  if (from === undefined || line === undefined || to === undefined) return draft
  const phases = draft.phases.map((each): DraftPhase => {
    if (each !== from && each !== to) return each
    const others = each.lines.filter((other) => other.id !== id)
    return { ...each, lines: each === to ? others.toSpliced(clamp(at, others.length), 0, line) : others }
  })
  if (from === to) return { ...draft, phases, steps: inLineOrder(draft.steps, from.lines, linesOf(phases, phase)) }
  return { ...draft, phases, steps: stepsOfPhase(draft.steps, id, phase) }
}

/** A step to a place of the procedure, counted without it. */
export function placeStep(draft: FormulaDraft, id: string, at: number): FormulaDraft {
  const step = draft.steps.find((each) => each.id === id)
  if (step === undefined) return draft
  const others = draft.steps.filter((each) => each.id !== id)
  return { ...draft, steps: others.toSpliced(clamp(at, others.length), 0, step) }
}

/** One place up (−1) or down (1): past the end of its phase a line goes on in the next one. */
export function stepLine(draft: FormulaDraft, id: string, by: -1 | 1): FormulaDraft {
  const at = draft.phases.findIndex(({ lines }) => lines.some((line) => line.id === id))
  const phase = draft.phases[at]
  if (phase === undefined) return draft
  const to = phase.lines.findIndex((line) => line.id === id) + by
  if (to >= 0 && to < phase.lines.length) return placeLine(draft, id, phase.id, to)
  const next = draft.phases[at + by]
  return next === undefined ? draft : placeLine(draft, id, next.id, by === 1 ? 0 : next.lines.length)
}

/** The weighing is listed under the new phase, after the weighings that are there and into their vessel. */
function stepsOfPhase(steps: readonly DraftItem[], line: string, phase: string): readonly DraftItem[] {
  const own = steps.filter(({ values }) => values.kind === 'weigh' && values.line === line)
  const listed = (step: DraftItem): DraftItem => ({ ...step, values: { ...step.values, phase } })
  const others = steps.filter((step) => !own.includes(step))
  const beside = others.findLastIndex(({ values }) => values.kind === 'weigh' && values.phase === phase)
  const vessel = others[beside]?.values.vessel
  // A q.s. line is weighed in several places: those stay where they are.
  if (vessel === undefined || own.length > 1) return steps.map((step) => (own.includes(step) ? listed(step) : step))
  const moved = own.map((step) => listed({ ...step, values: { ...step.values, vessel } }))
  return others.toSpliced(beside + 1, 0, ...moved)
}

/**
 * Weighings follow the order of their lines for as long as they stood in it: within each unbroken run of weighings into
 * one vessel, as what stands between two of them must stay between them.
 */
function inLineOrder(
  steps: readonly DraftItem[],
  before: readonly DraftItem[],
  after: readonly DraftItem[],
): readonly DraftItem[] {
  const placeIn = (lines: readonly DraftItem[]) => {
    const places = new Map(lines.map(({ id }, at) => [id, at]))
    return ({ values }: DraftItem) => (values.kind === 'weigh' ? (places.get(values.line ?? '') ?? -1) : -1)
  }
  const was = placeIn(before)
  const is = placeIn(after)
  const runs: DraftItem[][] = []
  for (const step of steps) {
    const last = runs.at(-1)
    const previous = last?.at(-1)
    const goesOn = previous && was(previous) >= 0 && was(step) >= 0 && previous.values.vessel === step.values.vessel
    if (last !== undefined && goesOn) last.push(step)
    else runs.push([step])
  }
  return runs.flatMap((run) => (isRising(run.map(was)) ? run.toSorted((a, b) => is(a) - is(b)) : run))
}

const isRising = (places: readonly number[]): boolean =>
  places.every((place, at) => at === 0 || place > (places[at - 1] ?? -1))

const linesOf = (phases: readonly DraftPhase[], id: string): readonly DraftItem[] =>
  phases.find((phase) => phase.id === id)?.lines ?? []

const clamp = (at: number, most: number): number => Math.max(0, Math.min(at, most))
