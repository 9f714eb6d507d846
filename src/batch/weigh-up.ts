import type { BatchVessel } from './header'
import type { PlannedLine } from './plan'
import { isPremixNote } from './premix-names'
import type { KindOf, Step } from './step'

export interface WeighedUp {
  readonly steps: readonly Step[]
  readonly cups: readonly BatchVessel[]
  /** The charge steps that were put in, by id, with the line that each tips in. */
  readonly added: ReadonlyMap<string, string>
}

/**
 * The same procedure with every line weighed into a labelled cup beforehand and tipped in where it was to be weighed.
 * What comes first into a vessel goes straight in: nothing has to wait for it there. Making a pre-mix stays before
 * the weighing that takes from it.
 */
export function weighUpFirst(procedure: readonly Step[], lines: ReadonlyMap<string, PlannedLine>): WeighedUp {
  const begun = new Set<string>()
  const weighings: Step[] = []
  const process: Step[] = []
  const cups: BatchVessel[] = []
  const tipIn = new Map<string, string>()
  const added = new Map<string, string>()
  for (const step of procedure) {
    const first = !begun.has(step.vessel)
    begun.add(step.vessel)
    if (isPremixNote(step.id)) {
      weighings.push(step)
    } else if (step.kind !== 'weigh') {
      process.push(step)
    } else if (first) {
      weighings.push(step)
    } else {
      const cup = cupOf(step, cups.length + 1, lines)
      cups.push(cup)
      weighings.push(intoCup(step, cup.id))
      const charge = chargeOf(step, cup.id)
      tipIn.set(step.id, charge.id)
      added.set(charge.id, step.line)
      process.push(charge)
    }
  }
  const steps = [...weighings, ...process].map((step) => followTipIn(step, tipIn))
  return { steps, cups, added }
}

function cupOf(step: KindOf<'weigh'>, number: number, lines: ReadonlyMap<string, PlannedLine>): BatchVessel {
  const name = lines.get(step.line)?.material.name
  return {
    id: `cup:${step.id}`,
    name: `Cup ${number}`,
    kind: 'cup',
    ...(name === undefined ? {} : { holds: name }),
  }
}

function intoCup(step: KindOf<'weigh'>, cup: string): Step {
  const { after = [], instruction: _whereItGoes, ...rest } = step
  return { ...rest, vessel: cup, after: after.filter(isPremixNote) }
}

function chargeOf(step: KindOf<'weigh'>, cup: string): KindOf<'charge'> {
  const { line: _line, kind: _kind, secondPerson: _checkedAtTheCup, ...rest } = step
  return { ...rest, id: `${step.id}:in`, kind: 'charge', cup, rate: 'all at once' }
}

/** What waited for a weighing waits for its cup to be tipped in. */
function followTipIn(step: Step, tipIn: ReadonlyMap<string, string>): Step {
  if (step.after === undefined) return step
  return { ...step, after: step.after.map((id) => tipIn.get(id) ?? id) }
}
