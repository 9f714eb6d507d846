import type { Lot, Material } from '../../batch/catalogue'
import type { Revision } from '../../batch/formula'
import type { BatchHeader } from '../../batch/header'
import type { Plan } from '../../batch/plan'
import { type PremixChoice, type Premixed, withPremixes } from '../../batch/premix'
import { premixId } from '../../batch/premix-names'
import { dilutionOf } from '../../batch/premix-recipe'
import type { Micrograms } from '../../trade/mass'
import { formatMass } from '../../trade/mass'
import type { Choice } from './choice'

type Lots = BatchHeader['lots']

export const premixChoices = ({ premixes }: Choice): readonly PremixChoice[] =>
  Object.entries(premixes).map(([line, premix]) => ({ line, ...premix }))

/** The revision as it will be weighed; without the dilutions where they do not go together any more. */
export function premixedOf(
  revision: Revision,
  choice: Choice,
  materials: ReadonlyMap<string, Material>,
  lots: Lots,
): Premixed {
  const lines = revision.phases.flatMap((phase) => phase.lines)
  const ratios = new Map(
    lots.flatMap(({ line, lots: [first] }) => {
      const assumed = lines.find(({ id }) => id === line)?.assayAssumed
      return assumed === undefined || first?.assay === undefined ? [] : [[line, first.assay / assumed] as const]
    }),
  )
  const mixed = withPremixes(revision, premixChoices(choice), materials, ratios)
  return mixed.ok ? mixed.value : { revision, materials: [], premixes: [] }
}

/** What is weighed to make each dilution, once balances and targets are known. */
export interface Mixing {
  readonly line: string
  readonly neatUg: Micrograms
  readonly thinnerUg: Micrograms
  readonly stepUg: Micrograms
  readonly neat: string
  readonly thinner: string
}

export function mixingsOf(
  { premixes }: Premixed,
  plan: Plan,
  materials: ReadonlyMap<string, Material>,
): readonly Mixing[] {
  return premixes.flatMap(({ line, into, oneIn, materialId }) => {
    const planned = plan.lines.get(line)
    if (!planned) return []
    const neat = materials.get(materialId)?.name ?? line
    const thinner = plan.lines.get(into)?.material.name ?? into
    return [{ line, neat, thinner, stepUg: planned.balance.stepUg, ...dilutionOf(planned, oneIn) }]
  })
}

/** Each dilution is a lot of its own, which names what it was made of and keeps until the first of it runs out. */
export function premixLots(lots: Lots, { premixes }: Premixed, mixings: readonly Mixing[]): Lots {
  const firstOf = (line: string): Lot | undefined => lots.find((each) => each.line === line)?.lots[0]
  return lots.map((each) => {
    const premix = premixes.find(({ line }) => line === each.line)
    const neat = each.lots[0]
    if (!premix || !neat) return each
    const thinner = firstOf(premix.into)
    const mixing = mixings.find(({ line }) => line === each.line) ?? { neatUg: 0, thinnerUg: 0 }
    const ends = [neat.expires, thinner?.expires].filter((day) => day !== undefined).sort()
    const lot: Lot = {
      id: premixId(each.line),
      materialId: premixId(each.line),
      code: `${neat.code} 1 in ${premix.oneIn}${thinner ? ` in ${thinner.code}` : ''}`.slice(0, 80),
      receivedUg: mixing.neatUg + mixing.thinnerUg,
      status: neat.status === 'quarantine' || thinner?.status === 'quarantine' ? 'quarantine' : 'released',
      ...(ends[0] === undefined ? {} : { expires: ends[0] }),
      ...(neat.assay === undefined ? {} : { assay: neat.assay / premix.oneIn }),
      madeFrom: [
        { lot: neat.id, massUg: mixing.neatUg },
        ...(thinner ? [{ lot: thinner.id, massUg: mixing.thinnerUg }] : []),
      ],
    }
    return { line: each.line, lots: [lot] }
  })
}

/** A dilution holds what its parts can still give. */
export function withPremixStock(onHand: ReadonlyMap<string, Micrograms>, lots: Lots): ReadonlyMap<string, Micrograms> {
  const made = lots.flatMap((each) => each.lots.filter(({ madeFrom }) => madeFrom))
  return new Map([
    ...onHand,
    ...made.map(({ id, receivedUg, madeFrom = [] }): [string, Micrograms] => {
      const least = Math.min(
        1,
        ...madeFrom.map(({ lot, massUg }) => (massUg === 0 ? 1 : (onHand.get(lot) ?? 0) / massUg)),
      )
      return [id, Math.floor(receivedUg * Math.max(0, least))]
    }),
  ])
}

/** The step that makes a dilution says what is weighed for it. */
export function withMixingWords(revision: Revision, mixings: readonly Mixing[], mark: '.' | ','): Revision {
  if (mixings.length === 0) return revision
  return {
    ...revision,
    procedure: revision.procedure.map((step) => {
      const mixing = mixings.find(({ line }) => step.kind === 'note' && step.vessel === premixId(line))
      if (step.kind !== 'note' || !mixing) return step
      const mass = (massUg: Micrograms) => `${formatMass(massUg, mixing.stepUg, mark)} g`
      const parts = `${mass(mixing.neatUg)} ${mixing.neat} and ${mass(mixing.thinnerUg)} ${mixing.thinner}`
      return { ...step, text: `${parts}. Stir until it is even.` }
    }),
  }
}
