import type { Micrograms } from '../trade/mass'
import type { Balance, Lot, Material, Person } from './catalogue'
import type { Revision } from './formula'
import type { KeptPremix } from './premix'

/** What a batch starts from, kept whole so that the batch can be read with nothing beside it. */
export interface BatchHeader {
  readonly id: string
  /** E.g. QW-LOT-01-041. */
  readonly code: string
  /** What chips say, e.g. Lotion 041. */
  readonly shortName: string
  readonly formulaId: string
  readonly formulaCode: string
  readonly formulaName: string
  readonly contact: 'rinse-off' | 'leave-on'
  readonly revision: Revision
  readonly sizeUg: Micrograms
  readonly mode: WeighMode
  readonly vessels: readonly BatchVessel[]
  readonly materials: readonly Material[]
  /** Lots to be used, in order of use, by line. */
  readonly lots: readonly { readonly line: string; readonly lots: readonly Lot[] }[]
  readonly balances: readonly Balance[]
  readonly balanceOfLine: readonly { readonly line: string; readonly balance: string }[]
  readonly people: { readonly performs: Person; readonly checks?: Person; readonly others: readonly Person[] }
  /** What Start called out and the person kept all the same, with the reason. */
  readonly kept: readonly { readonly code: string; readonly about: string; readonly reason: string }[]
  readonly ambientC?: number
  /** Lines that this batch weighs as a dilution; its revision already says so. */
  readonly premixes?: readonly KeptPremix[]
}

export type WeighMode = 'as-you-go' | 'weigh-up-first'

/** A vessel or cup on this bench today. Its tare includes what stands in it. */
export interface BatchVessel {
  readonly id: string
  readonly name: string
  readonly kind: 'vessel' | 'cup'
  readonly tareUg?: Micrograms
  readonly standsIn?: string
  readonly capacityUg?: Micrograms
  /** What its stirrer keeps moving. */
  readonly stirsUg?: { readonly min: Micrograms; readonly max: Micrograms }
  readonly openLifeMinutes?: number
  /** What the label of a cup says is in it. */
  readonly holds?: string
}
