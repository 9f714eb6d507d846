import type { Micrograms } from '../trade/mass'
import type { Balance, Lot, Material } from './catalogue'
import type { Line } from './formula'
import type { BatchVessel } from './header'
import type { Step, StepBase } from './step'

/** Steps and targets of one batch: what a revision, a size, lots and vessels make. */
export interface Plan {
  readonly totalUg: Micrograms
  readonly heldBackUg: Micrograms
  readonly steps: readonly PlannedStep[]
  readonly byId: ReadonlyMap<string, PlannedStep>
  readonly lines: ReadonlyMap<string, PlannedLine>
  readonly vessels: ReadonlyMap<string, BatchVessel>
  readonly phases: readonly { readonly letter: string; readonly name: string }[]
}

export interface PlannedStep {
  readonly id: string
  readonly step: Step
  readonly index: number
  /** Steps that must be done or skipped first. */
  readonly waitsFor: readonly string[]
  /** Of weigh steps: what to weigh. Of adjust steps: what is expected. */
  readonly targetUg?: Micrograms
  readonly line?: PlannedLine
  /** True where the step was put in because the batch is weighed up first. */
  readonly weighUp?: boolean
  /** Of a rework: which one, from 1. */
  readonly part?: number
}

export interface PlannedLine {
  readonly line: Line
  /** The letter of its phase; `+` where a rework adds what the formula does not have. */
  readonly phase: string
  readonly material: Material
  readonly fraction: number
  readonly targetUg: Micrograms
  readonly balance: Balance
  readonly lots: readonly Lot[]
}

/** What a rework asks for: so much of a line of the formula, or of a material beside it. It is weighed like any line. */
export interface Addition extends StepBase {
  readonly kind: 'add'
  readonly line?: string
  readonly name: string
  readonly massUg: Micrograms
  /** A line of its own, which the formula does not have. */
  readonly beside?: PlannedLine
}
