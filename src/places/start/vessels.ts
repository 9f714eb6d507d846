import type { StartRefusal } from '../../app/refusals/forms-start'
import type { Balance, KeptVessel } from '../../batch/catalogue'
import type { VesselNeed } from '../../batch/formula'
import type { BatchVessel } from '../../batch/header'
import type { Micrograms } from '../../trade/mass'
import { type NumberRefusal, readMass } from '../../trade/number-text'
import { accept, type Result, refuse } from '../../trade/result'
import type { Choice, VesselChoice } from './choice'

type TextRefusal = NumberRefusal | StartRefusal

/** A vessel that the formula names, what stands for it on this bench, and what is wrong with what was typed. */
export interface VesselRow {
  readonly need: VesselNeed
  readonly kept: KeptVessel | null
  readonly vessel: BatchVessel
  readonly peakUg: Micrograms
  readonly tareRefusal: TextRefusal | null
  readonly capacityRefusal: TextRefusal | null
}

export const noVessel: VesselChoice = { kept: '', name: '', tare: '', capacity: '', standsIn: '' }

/** `peaks`: the most that will be in each, by id. Kept vessels are proposed by name, then by room, each once. */
export function vesselRows(
  needs: readonly VesselNeed[],
  choice: Choice,
  kept: readonly KeptVessel[],
  peaks: ReadonlyMap<string, Micrograms>,
  balances: readonly Balance[],
): readonly VesselRow[] {
  const taken = new Set(Object.values(choice.vessels).map((each) => each.kept))
  const free = kept.filter(({ id, archived }) => !taken.has(id) && !archived)
  return needs.map((need) => {
    const peakUg = peaks.get(need.id) ?? 0
    const chosen = choice.vessels[need.id]
    const own = chosen ? kept.find(({ id }) => id === chosen.kept) : propose(need, peakUg, free)
    if (!chosen && own) free.splice(free.indexOf(own), 1)
    return rowOf(need, chosen ?? noVessel, own ?? null, peakUg, balances)
  })
}

/** The smallest that has the room wanted; where none has, none: a wrong proposal would go unread. */
function propose(need: VesselNeed, peakUg: Micrograms, free: readonly KeptVessel[]): KeptVessel | undefined {
  const named = free.find(({ name }) => name.toLowerCase() === need.name.toLowerCase())
  if (named) return named
  const wantedUg = peakUg * (need.roomFactor ?? 1)
  return [...free].sort((a, b) => a.capacityUg - b.capacityUg).find(({ capacityUg }) => capacityUg >= wantedUg)
}

function rowOf(
  need: VesselNeed,
  chosen: VesselChoice,
  kept: KeptVessel | null,
  peakUg: Micrograms,
  balances: readonly Balance[],
): VesselRow {
  const tare = readTare(chosen, kept, balances)
  const capacity = readOptional(chosen.capacity)
  const capacityUg = (capacity.ok ? capacity.value : undefined) ?? kept?.capacityUg
  const tareUg = tare.ok ? tare.value : undefined
  return {
    need,
    kept,
    peakUg,
    tareRefusal: tare.ok ? null : tare.refusal,
    capacityRefusal: capacity.ok ? null : capacity.refusal,
    vessel: {
      id: need.id,
      name: chosen.name.trim() || need.name,
      kind: need.kind,
      ...(tareUg === undefined ? {} : { tareUg }),
      ...(capacityUg === undefined ? {} : { capacityUg }),
      ...(kept?.stirsUg === undefined ? {} : { stirsUg: kept.stirsUg }),
      ...(chosen.standsIn.trim() === '' ? {} : { standsIn: chosen.standsIn.trim() }),
      ...(need.openLifeMinutes === undefined ? {} : { openLifeMinutes: need.openLifeMinutes }),
    },
  }
}

/** A typed tare counts; that of the kept vessel only while nothing stands in it. */
function readTare(
  chosen: VesselChoice,
  kept: KeptVessel | null,
  balances: readonly Balance[],
): Result<Micrograms | undefined, TextRefusal> {
  const typed = readOptional(chosen.tare)
  if (!typed.ok) return typed
  if (typed.value === undefined) return accept(chosen.standsIn.trim() === '' ? kept?.tareUg : undefined)
  const largest = [...balances].sort((a, b) => b.capacityUg - a.capacityUg)[0]
  if (largest && typed.value > largest.capacityUg)
    return refuse({ code: 'START_TARE_OVER', balance: largest.name, capacityUg: largest.capacityUg })
  return typed
}

const readOptional = (text: string): Result<Micrograms | undefined, NumberRefusal> =>
  text.trim() === '' ? accept(undefined) : readMass(text, { negative: false, zero: false })
