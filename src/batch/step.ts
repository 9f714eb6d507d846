import type { Micrograms } from '../trade/mass'

/**
 * A step of a procedure. It waits for the earlier steps of its own vessel and for `after`, for nothing else.
 * A new kind is added here, as a card in places/run, and wherever the type checker then points.
 */
export type Step = StepBase & StepKind

export interface StepBase {
  readonly id: string
  /** The vessel it happens in; for charge and combine the one that receives. */
  readonly vessel: string
  /** The letter of the phase it is listed under; `finish` for what comes after the phases. */
  readonly phase: string
  readonly title?: string
  readonly instruction?: string
  readonly after?: readonly string[]
  readonly secondPerson?: boolean
  readonly caution?: string
}

export type StepKind =
  | { readonly kind: 'weigh'; readonly line: string }
  | { readonly kind: 'charge'; readonly cup: string; readonly rate: ChargeRate; readonly rinse?: boolean }
  | {
      readonly kind: 'combine'
      readonly from: string
      readonly maxDifferenceC?: number
      readonly bothAtLeastC?: number
      readonly rinse?: boolean
    }
  | { readonly kind: 'heat'; readonly targetC: number; readonly covered?: boolean; readonly holdMinutes?: number }
  | { readonly kind: 'cool'; readonly targetC: number; readonly by: 'air' | 'bath' }
  | { readonly kind: 'hold'; readonly minutes: number; readonly startsWhen?: string }
  | { readonly kind: 'hydrate'; readonly minutes: number; readonly shear: string; readonly startsWhen?: string }
  | {
      readonly kind: 'mix'
      readonly tool: string
      readonly rpm?: { readonly min: number; readonly max: number }
      readonly minutes: number
      readonly noVortex?: boolean
    }
  | { readonly kind: 'deaerate'; readonly by: 'stand' | 'vacuum'; readonly minutes: number }
  | { readonly kind: 'measure'; readonly check: string }
  | {
      readonly kind: 'adjust'
      readonly property: 'pH' | 'viscosity'
      readonly line: string
      readonly check: string
      /** What one portion should not pass when the card proposes one. */
      readonly portionUg?: Micrograms
      readonly waitMinutes?: number
    }
  | { readonly kind: 'make-up'; readonly line: string }
  | { readonly kind: 'rest'; readonly hours: number }
  | { readonly kind: 'sample'; readonly jars: number; readonly eachUg: Micrograms }
  | { readonly kind: 'fill'; readonly units?: number; readonly eachUg?: Micrograms }
  | { readonly kind: 'clean' }
  | { readonly kind: 'note'; readonly text: string }

export type ChargeRate = 'sprinkle' | 'stream' | 'portions' | 'all at once'

export type KindOf<K extends StepKind['kind']> = StepBase & Extract<StepKind, { kind: K }>
