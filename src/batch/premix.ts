import { accept, type Result, refuse } from '../trade/result'
import type { Material } from './catalogue'
import type { Line, Revision } from './formula'
import { premixMaterial } from './premix-material'
import { premixId } from './premix-names'
import { fractionsOf } from './schemas/check-revision'
import type { Step } from './step'

/** One part of a line in `oneIn` parts of a dilution, made with the line `into`, which gives up what the dilution brings. */
export interface PremixChoice {
  readonly line: string
  readonly into: string
  readonly oneIn: number
}

/** As a batch keeps it: with the material that the line was written for. */
export interface KeptPremix extends PremixChoice {
  readonly materialId: string
}

export type PremixRefusal =
  | { readonly code: 'PREMIX_CIRCULAR'; readonly lines: readonly string[] }
  | { readonly code: 'PREMIX_TOO_MUCH' | 'PREMIX_OF_PREMIX'; readonly line: string; readonly into: string }
  | { readonly code: 'PREMIX_NOT_A_SHARE' | 'PREMIX_LINE_GONE'; readonly line: string }

export interface Premixed {
  readonly revision: Revision
  /** The dilutions, as materials of this batch. */
  readonly materials: readonly Material[]
  readonly premixes: readonly KeptPremix[]
}

/**
 * The revision weighed with dilutions: a line that is too small is weighed as `oneIn` times as much of its dilution,
 * and what the dilution brings of the other line comes off that line, so that the product stays the same.
 * `assayRatios`: the active matter of a line's lot ÷ what the formula assumes, where it is not 1.
 */
export function withPremixes(
  revision: Revision,
  choices: readonly PremixChoice[],
  materials: ReadonlyMap<string, Material>,
  assayRatios: ReadonlyMap<string, number> = new Map(),
): Result<Premixed, PremixRefusal> {
  const ring = circular(choices)
  if (ring) return refuse({ code: 'PREMIX_CIRCULAR', lines: ring })
  const chained = choices.find(({ into }) => choices.some(({ line }) => line === into))
  if (chained) return refuse({ code: 'PREMIX_OF_PREMIX', line: chained.line, into: chained.into })
  let made: Premixed = { revision, materials: [], premixes: [] }
  for (const choice of choices) {
    const next = withOne(made, choice, materials, assayRatios.get(choice.line) ?? 1)
    if (!next.ok) return next
    made = next.value
  }
  return accept(made)
}

/** Shares of the product by line as the formula names them: what was weighed as a dilution is counted as its parts. */
export function unmixed(
  shares: ReadonlyMap<string, number>,
  premixes: readonly PremixChoice[],
): ReadonlyMap<string, number> {
  const apart = new Map(shares)
  for (const { line, into, oneIn } of premixes) {
    const share = apart.get(line)
    if (share === undefined) continue
    apart.set(line, share / oneIn)
    apart.set(into, (apart.get(into) ?? 0) + (share * (oneIn - 1)) / oneIn)
  }
  return apart
}

function withOne(
  { revision, materials: made, premixes }: Premixed,
  choice: PremixChoice,
  materials: ReadonlyMap<string, Material>,
  assayRatio: number,
): Result<Premixed, PremixRefusal> {
  const { line: id, into, oneIn } = choice
  const lines = revision.phases.flatMap((phase) => phase.lines)
  const line = lines.find((each) => each.id === id)
  const carrier = lines.find((each) => each.id === into)
  const neat = line && materials.get(line.materialId)
  const thinner = carrier && materials.get(carrier.materialId)
  if (!line || !carrier || !neat || !thinner) return refuse({ code: 'PREMIX_LINE_GONE', line: id })
  if (line.amount.kind !== 'fraction' || carrier.amount.kind === 'as-needed')
    return refuse({ code: 'PREMIX_NOT_A_SHARE', line: id })
  const { fraction } = line.amount
  const broughtShare = (fraction * (oneIn - 1)) / assayRatio
  const has = carrier.amount.kind === 'qs' ? (fractionsOf(lines).qs ?? 0) : carrier.amount.fraction
  if (exact(has - broughtShare) <= 0) return refuse({ code: 'PREMIX_TOO_MUCH', line: id, into })
  const material = premixMaterial(id, neat, thinner, oneIn)
  const change = (each: Line): Line => {
    if (each.id === id) return diluted(each, fraction, material.id, oneIn)
    return each.id === into ? lessened(each, broughtShare) : each
  }
  const holds = `${neat.name} in ${thinner.name}`
  return accept({
    materials: [...made, material],
    premixes: [...premixes, { ...choice, materialId: neat.id }],
    revision: {
      ...revision,
      phases: revision.phases.map((phase) => ({ ...phase, lines: phase.lines.map(change) })),
      vessels: [...revision.vessels, { id: premixId(id), name: `Pre-mix, ${neat.name}`, kind: 'cup', holds }],
      procedure: revision.procedure.flatMap((step) =>
        step.kind === 'weigh' && step.line === id ? [noteOf(step, choice, holds), afterNote(step)] : [step],
      ),
    },
  })
}

/** Making the dilution is a step of its own, in its own cup, that the weighing waits for. */
const noteOf = (step: Step, { line, oneIn }: PremixChoice, holds: string): Step => ({
  id: premixId(step.id),
  kind: 'note',
  vessel: premixId(line),
  phase: step.phase,
  title: 'Make the pre-mix',
  text: `${holds}, 1 in ${oneIn}, stirred until it is even.`,
})

const afterNote = (step: Step): Step => ({ ...step, after: [...(step.after ?? []), premixId(step.id)] })

function diluted(line: Line, fraction: number, materialId: string, oneIn: number): Line {
  const { range, tolerance, assayAssumed } = line
  return {
    ...line,
    materialId,
    amount: { kind: 'fraction', fraction: exact(fraction * oneIn) },
    ...(range ? { range: { min: exact(range.min * oneIn), max: Math.min(1, exact(range.max * oneIn)) } } : {}),
    ...(tolerance && 'absoluteUg' in tolerance ? { tolerance: { absoluteUg: tolerance.absoluteUg * oneIn } } : {}),
    ...(assayAssumed === undefined ? {} : { assayAssumed: assayAssumed / oneIn }),
  }
}

function lessened(line: Line, share: number): Line {
  const { amount, range } = line
  const shifted = range
    ? { range: { min: Math.max(0, exact(range.min - share)), max: Math.max(0, exact(range.max - share)) } }
    : {}
  if (amount.kind !== 'fraction') return { ...line, ...shifted }
  return { ...line, ...shifted, amount: { kind: 'fraction', fraction: exact(amount.fraction - share) } }
}

/** A formula's fractions are decimals of 12 places at most: a product or difference keeps to them. */
const exact = (fraction: number): number => Number(fraction.toFixed(12))

/** A dilution that waits, over others or none, for itself. */
function circular(choices: readonly PremixChoice[]): readonly string[] | null {
  const into = new Map(choices.map((choice) => [choice.line, choice.into]))
  for (const { line } of choices) {
    const ring = [line]
    for (let next = into.get(line); next !== undefined; next = into.get(next)) {
      if (next === line) return ring
      if (ring.includes(next)) break
      ring.push(next)
    }
  }
  return null
}
