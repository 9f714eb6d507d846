import type { Format } from '../../../app/format'
import type { KindOf } from '../../../batch/step'
import type { IconName } from '../../../parts/icon'
import type { RunModel } from '../run-model'
import type { ThermalEntries } from './thermal-entries'
import type { StepClock } from './use-clock'
import type { ThermalView } from './use-thermal'

export interface ThermalProps {
  step: KindOf<'heat'> | KindOf<'cool'>
  reached: boolean
  /** Degrees still to go; null before the first reading. */
  leftC: number | null
  holdMinutes?: number | undefined
  /** How it is done, in a sentence. */
  how: string
  /** What a person can change about it meanwhile, which starts the estimate anew. */
  change: { readonly label: string; readonly what: string; readonly icon: IconName }
}

export interface Typing {
  /** The pad is shown, not the curve. */
  readonly is: boolean
  readonly open: () => void
  readonly close: () => void
}

/** What the parts of a thermometer's card act on. */
export interface ThermalAct extends ThermalProps {
  readonly run: RunModel
  readonly format: Format
  readonly view: ThermalView
  readonly clock: StepClock | null
  readonly entries: ThermalEntries
  readonly typing: Typing
}
