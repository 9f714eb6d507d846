import { phaseOf, wasLeftOpen } from './fold-rework'
import type { BatchVessel } from './header'
import type { ReworkStep } from './intention'
import type { BatchDraft, Bodies } from './kinds'
import { acceptedChangeUg } from './losses'
import { openDeviations } from './open-deviations'
import type { Addition, PlannedLine } from './plan'
import type { BatchState } from './state'
import type { Step } from './step'
import { lower } from './wording'

type Planned = Pick<Bodies['reworked'], 'steps' | 'cups'>

/** The steps of a rework as they are written: each with its place, what it adds with the care of the formula. */
export function planRework(state: BatchState, steps: readonly ReworkStep[], newId: () => string): Planned {
  const phase = phaseOf(state.parts.length + 1)
  const placed = steps.map((step): Step | Addition => {
    const place = { id: `rework-${newId()}`, phase }
    return step.kind === 'add' ? additionOf(state, step, place) : { ...step, ...place }
  })
  return state.header.mode === 'weigh-up-first' ? intoCups(state, placed) : { steps: placed }
}

/** As the formula weighs its line: a second person, what to look out for. Beside it, on the finest balance that carries it. */
function additionOf(
  { plan, header }: BatchState,
  asked: Extract<ReworkStep, { kind: 'add' }>,
  place: { readonly id: string; readonly phase: string },
): Addition {
  const { material, lots: _chosenOnceOpen, ...rest } = asked
  const { line, name, massUg } = asked
  const addition = { title: name, ...rest, ...place }
  if (line === undefined) {
    const carrying = header.balances.filter(({ capacityUg }) => capacityUg >= massUg)
    const [balance = header.balances[0]] = carrying.sort((a, b) => a.stepUg - b.stepUg)
    if (balance === undefined) return addition
    const known = material ?? { id: place.id, name, inci: [], function: 'not stated' }
    const beside: PlannedLine = {
      line: { id: place.id, materialId: known.id, amount: { kind: 'fraction', fraction: 0 } },
      phase: '+',
      material: known,
      fraction: 0,
      targetUg: massUg,
      balance,
      lots: [],
    }
    return { ...addition, beside }
  }
  const own = plan.steps.find(({ step }) => step.kind === 'weigh' && step.line === line)?.step
  const { secondPerson, caution } = own ?? {}
  return {
    ...addition,
    ...(secondPerson === undefined ? {} : { secondPerson }),
    ...(caution === undefined ? {} : { caution }),
  }
}

/** All of it is weighed into labelled cups first, and tipped in where it was to be added. */
function intoCups({ plan }: BatchState, steps: Planned['steps']): Planned {
  const additions = steps.filter((step) => step.kind === 'add')
  const before = [...plan.vessels.values()].filter(({ kind }) => kind === 'cup').length
  const cupOf = ({ id }: Addition): string => `cup:${id}`
  const cups = additions.map(
    (step, at): BatchVessel => ({
      id: cupOf(step),
      name: `Cup ${before + at + 1}`,
      kind: 'cup',
      holds: step.name,
    }),
  )
  const tippedIn = steps.map((step): Step | Addition => {
    if (step.kind !== 'add') return step
    const { id, vessel, phase, name } = step
    const title = `Tip in ${lower(name)}`
    return { id: `${id}:in`, vessel, phase, title, kind: 'charge', cup: cupOf(step), rate: 'all at once' }
  })
  return { steps: [...additions.map((step) => ({ ...step, vessel: cupOf(step) })), ...tippedIn], cups }
}

/** Deviations that nobody decided on before the batch was closed: what is in by them is what the rework begins with. */
export function acceptedAsLeft(state: BatchState): readonly BatchDraft[] {
  let { totalUg } = state
  return openDeviations(state).map((deviation): BatchDraft => {
    totalUg += acceptedChangeUg(deviation)
    const { heldBackUg } = state
    const body = { deviation: deviation.id, reason: wasLeftOpen, totalUg, heldBackUg, targets: [] }
    return { kind: 'remedy-chosen', body: { ...body, remedy: 'accept' } }
  })
}

/** The lots of what is beside the formula, in their order of use: chosen with the opening, as Start does for its lines. */
export function lotsBeside(steps: readonly ReworkStep[], { steps: placed }: Planned): readonly BatchDraft[] {
  const ids = placed.flatMap((step) => (step.kind === 'add' ? [step.id] : []))
  const additions = steps.filter((step) => step.kind === 'add')
  return additions.flatMap(({ lots = [] }, at): readonly BatchDraft[] => {
    const line = ids[at]
    if (line === undefined || lots.length === 0) return []
    return [{ kind: 'lot-chosen', body: { line, lots: lots.map(({ id }) => id), opened: lots } }]
  })
}
