import { families } from './families'
import { type Mixture, phOf, type Species, strongIonsFor } from './mixture'
import { type Random, randomOf } from './random'

/** A batch that is brought to a pH, with what an adviser does not see: its true strength, its buffers, the meter's noise. */
export interface SimulatedBatch extends Mixture {
  readonly seed: number
  readonly family: string
  readonly adj: Seen['adj']
  readonly target: { readonly lo: number; readonly hi: number }
  /** Readability of the balance, g. */
  readonly d: number
  /** Standard deviation of one reading. */
  readonly noise: number
  readonly startPH: number
}

/** All that an adviser sees: grams are cumulative, as recorded. */
export interface Seen {
  readonly mass: number
  readonly target: { readonly lo: number; readonly hi: number }
  readonly adj: {
    readonly name: string
    readonly w: number
    readonly mw: number
    readonly sp: Species | null
    readonly sid: number
    readonly dir: number
  }
  readonly d: number
  readonly history: readonly { readonly g: number; readonly pH: number }[]
}

/** Grams to add now, or that no more is to be added. */
export type Adviser = (seen: Seen) => number | { readonly stop: true }

export interface Outcome {
  readonly adds: number
  readonly inWindow: boolean
  /** The true pH was past the far edge of the window at some time. */
  readonly over: boolean
  readonly history: Seen['history']
}

const mostAdditions = 15

/** One of the families, at a size, start, window, adjuster and noise that only the seed decides. */
export function makeBatch(seed: number): SimulatedBatch {
  const random = randomOf(seed)
  const names = Object.keys(families)
  const family = names[Math.floor(random.even() * names.length)] ?? ''
  const recipe = families[family]?.(random)
  if (recipe === undefined) throw new Error(`There is no family ${family}`)
  const { w, dir, ...chemistry } = recipe.adjuster
  const width = random.oneOf(0.3, 0.4, 0.4, 0.5, 0.6)
  const lo = hundredths(recipe.middlePh - width / 2)
  const mass = Math.round(random.scaled(50, 5000))
  return atStart(
    {
      seed,
      family,
      mass,
      waterFraction: recipe.waterFraction,
      buffers: recipe.buffers.map(({ name, sp, perKg }) => ({ name, sp, mol: (perKg * mass) / 1e6 })),
      adjuster: { ...chemistry, wTrue: trueStrength(random, w) },
      adj: { ...chemistry, w, dir },
      target: { lo, hi: hundredths(lo + width) },
      d: balanceFor(mass),
      noise: random.between(0.02, 0.05),
      sidMol: 0,
    },
    recipe.startPh,
  )
}

/** The same formula made again: another size, buffers a few per cent off, a slightly different start. */
export function sibling(batch: SimulatedBatch, seed: number): SimulatedBatch {
  const random = randomOf(seed + 0.5e9)
  const mass = Math.round(random.scaled(50, 5000))
  const scale = mass / batch.mass
  return atStart(
    {
      ...batch,
      seed,
      mass,
      buffers: batch.buffers.map((buffer) => ({ ...buffer, mol: buffer.mol * scale * random.normal(1, 0.08) })),
      adjuster: { ...batch.adjuster, wTrue: trueStrength(random, batch.adj.w) },
      d: balanceFor(mass),
      noise: random.between(0.02, 0.05),
      sidMol: 0,
    },
    batch.startPH + random.normal(0, 0.15),
  )
}

/** Adds what the adviser says, and reads, until it stops, the window is passed, or it is enough. */
export function runBatch(
  batch: SimulatedBatch,
  adviser: Adviser,
  { seed = 1 }: { readonly seed?: number } = {},
): Outcome {
  const random = randomOf(batch.seed * 1000 + seed)
  const { target, adj, mass, d } = batch
  const isPast = (ph: number): boolean => (adj.dir < 0 ? ph < target.lo : ph > target.hi)
  const read = (grams: number): number => hundredths(phOf(batch, grams) + random.normal(0, batch.noise))
  const history = [{ g: 0, pH: read(0) }]
  let [inside, recorded, additions, over] = [0, 0, 0, false]
  while (additions < mostAdditions) {
    const asked = adviser({ mass, target, adj, d, history: [...history] })
    if (typeof asked !== 'number') break
    // A hand is 2 % and one step of the balance off what it meant to add; the balance then shows what went in.
    const added = Math.max(d, asked * random.normal(1, 0.02) + random.normal(0, d))
    inside += added
    recorded += Math.max(d, Math.round(added / d) * d)
    additions += 1
    over ||= isPast(phOf(batch, inside))
    const reading = { g: recorded, pH: read(inside) }
    history.push(reading)
    if (isPast(reading.pH)) break
  }
  const ph = phOf(batch, inside)
  return { adds: additions, inWindow: target.lo <= ph && ph <= target.hi, over, history }
}

const atStart = (batch: Omit<SimulatedBatch, 'startPH'>, startPH: number): SimulatedBatch => ({
  ...batch,
  startPH,
  sidMol: strongIonsFor(batch, startPH),
})

/** The bottle is not quite as strong as its label says. */
const trueStrength = (random: Random, labelled: number): number => labelled * random.normal(1, 0.015)

const balanceFor = (massG: number): number => (massG < 300 ? 0.001 : 0.01)
const hundredths = (value: number): number => Math.round(value * 100) / 100
