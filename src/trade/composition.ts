import { addedInAll, contentsOf, inSink, type Ledger, massIn, type Sink } from './ledger'
import { heldInAll, sinkContents, vesselsOf } from './ledger-sums'
import type { Micrograms } from './mass'

/**
 * The fractions by component of what was made: of the vessels named, else of everything in vessels and cups and what
 * was filled from them. Empty where there is nothing.
 */
export function compositionAsMade(ledger: Ledger, vessels?: readonly string[]): ReadonlyMap<string, number> {
  const parts = (vessels ?? vesselsOf(ledger)).map((vessel) => contentsOf(ledger, vessel))
  const masses = new Map<string, Micrograms>()
  for (const part of vessels ? parts : [...parts, sinkContents(ledger, 'filled')])
    for (const [component, massUg] of part) masses.set(component, (masses.get(component) ?? 0) + massUg)
  const totalUg = [...masses.values()].reduce((sum, massUg) => sum + massUg, 0)
  return new Map([...masses].map(([component, massUg]) => [component, massUg / totalUg]))
}

/** Where everything that was put in has gone. Always: added = filled + in vessels + the sinks, to the microgram. */
export interface Reconciliation {
  readonly theoreticalUg: Micrograms
  readonly addedUg: Micrograms
  readonly inVesselsUg: Micrograms
  readonly filledUg: Micrograms
  readonly sampledUg: Micrograms
  readonly evaporatedUg: Micrograms
  readonly leftBehindUg: Micrograms
  readonly spilledUg: Micrograms
  readonly discardedUg: Micrograms
  /** Left behind on the way, and what was read on the balance as still standing in the vessels. */
  readonly residueUg: Micrograms
  /** What the books hold in vessels and nobody has seen; below zero where more was read. Null before anything was filled. */
  readonly unexplainedUg: Micrograms | null
  /** Theoretical less product: positive where less came out than the plan said. */
  readonly shortUg: Micrograms
  /** Product (in vessels and filled) ÷ all that was put in, make-up included; 0 before the first addition. */
  readonly yieldFraction: number
  /** Product ÷ theoretical. */
  readonly yieldOfTheoretical: number
  /** Filled and sampled ÷ theoretical: what came out of the batch. */
  readonly outFraction: number
}

/** `standingUg` is what the vessels were read to hold still once the batch was filled; 0 where nobody read it. */
export function reconcile(ledger: Ledger, theoreticalUg: Micrograms, standingUg: Micrograms = 0): Reconciliation {
  const addedUg = addedInAll(ledger)
  const inVesselsUg = heldInAll(ledger)
  const sink = (name: Sink): Micrograms => inSink(ledger, name)
  const filledUg = sink('filled')
  const productUg = inVesselsUg + filledUg
  const isFilled = filledUg > 0
  return {
    theoreticalUg,
    addedUg,
    inVesselsUg,
    filledUg,
    sampledUg: sink('sampled'),
    evaporatedUg: sink('evaporated'),
    leftBehindUg: sink('left-behind'),
    spilledUg: sink('spilled'),
    discardedUg: sink('discarded'),
    residueUg: sink('left-behind') + (isFilled ? standingUg : 0),
    unexplainedUg: isFilled ? inVesselsUg - standingUg : null,
    shortUg: theoreticalUg - productUg,
    yieldFraction: share(productUg, addedUg),
    yieldOfTheoretical: share(productUg, theoreticalUg),
    outFraction: share(filledUg + sink('sampled'), theoreticalUg),
  }
}

export interface GrossReading {
  readonly grossUg: Micrograms
  readonly tareUg: Micrograms
  /** Differences up to this count as nothing. */
  readonly uncertaintyUg: Micrograms
  /** The component a loss is taken from: water, or a named volatile line. */
  readonly component: string
}

export interface MassBalance {
  readonly theoreticalUg: Micrograms
  readonly netUg: Micrograms
  /** Theoretical less net. */
  readonly differenceUg: Micrograms
  /** A *gain* corrects nothing: ask for the tare, or for an addition that was not written down. */
  readonly status: 'nothing' | 'loss' | 'gain'
  /** What brings the vessel back to its theoretical mass: the loss, else 0. */
  readonly makeUpUg: Micrograms
  /** False where the loss is more than the vessel holds of the component. */
  readonly possible: boolean
}

/** A vessel on the balance against what the ledger says is in it. Changes nothing: the caller posts the loss. */
export function massBalanceReading(ledger: Ledger, vessel: string, reading: GrossReading): MassBalance {
  const theoreticalUg = massIn(ledger, vessel)
  const netUg = reading.grossUg - reading.tareUg
  const differenceUg = theoreticalUg - netUg
  const status = statusOf(differenceUg, reading.uncertaintyUg)
  const makeUpUg = status === 'loss' ? differenceUg : 0
  const heldUg = contentsOf(ledger, vessel).get(reading.component) ?? 0
  return { theoreticalUg, netUg, differenceUg, status, makeUpUg, possible: makeUpUg <= heldUg }
}

function statusOf(differenceUg: Micrograms, uncertaintyUg: Micrograms): MassBalance['status'] {
  if (Math.abs(differenceUg) <= uncertaintyUg) return 'nothing'
  return differenceUg > 0 ? 'loss' : 'gain'
}

const share = (partUg: Micrograms, wholeUg: Micrograms): number => (wholeUg === 0 ? 0 : partUg / wholeUg)
