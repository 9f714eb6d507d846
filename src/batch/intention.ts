import type { Micrograms } from '../trade/mass'
import type { Reading } from '../trade/weighing'
import type { Lot, Material } from './catalogue'
import type { DeviceSigned } from './device-signature'
import type { Source } from './event'
import type { BatchHeader } from './header'
import type { HowRead } from './how-read'
import type { Bodies, Disposition, InstrumentCheck, RemedyKind, Surroundings } from './kinds'
import type { Signature, Signatures } from './signature'
import type { StabilityPlan } from './stability-plan'
import type { StepKind } from './step'

/** What a person (or a device on their behalf) wants. `decide` makes entries of it, or says why not. */
export type Intention =
  | { readonly do: 'open'; readonly header: BatchHeader; readonly preflight: Bodies['preflight-checked']['items'] }
  | { readonly do: 'check-instrument'; readonly check: InstrumentCheck; readonly good: boolean }
  | { readonly do: 'tare'; readonly vessel: string; readonly tareUg: Micrograms; readonly standsIn?: string }
  | {
      readonly do: 'choose-lots'
      readonly line: string
      readonly lots: readonly string[]
      /** Lots among them that Start did not plan with: the next drum is opened when the last one is empty. */
      readonly opened?: readonly Lot[]
      readonly reason?: string
    }
  | {
      readonly do: 'weigh'
      readonly step: string
      readonly reading: Reading
      readonly lot?: string
      readonly source?: Source
      readonly checkedBy?: string
      /** Of who checks, where that person signs with a PIN. */
      readonly signature?: Signature
    }
  | { readonly do: 'leave-short'; readonly step: string; readonly reason: string }
  | { readonly do: 'strike'; readonly entry: string; readonly reason: string }
  | { readonly do: 'take-out'; readonly step: string; readonly massUg: Micrograms; readonly reason: string }
  | { readonly do: 'discard-cup'; readonly vessel: string; readonly reason: string }
  | {
      readonly do: 'settle'
      readonly deviation: string
      readonly remedy: RemedyKind
      readonly reason: string
      /** The figures of the offer that was chosen; they are checked. Absent: those of the kind as it is offered now. */
      readonly figures?: Pick<Bodies['remedy-chosen'], 'totalUg' | 'heldBackUg' | 'targets'>
    }
  | {
      readonly do: 'add-unplanned'
      readonly name: string
      readonly materialId?: string
      readonly vessel: string
      readonly netUg: Micrograms
      readonly lot?: string
      readonly reason: string
      readonly most?: number
      /** Whole, so that limits on what it holds are kept as well. */
      readonly material?: Material
    }
  /** A weighing came from another lot than was written down; `opened` where the batch does not know that lot yet. */
  | {
      readonly do: 'correct-lot'
      readonly entry: string
      readonly lot: string
      readonly opened?: Lot
      readonly reason: string
    }
  | { readonly do: 'spill'; readonly vessel: string; readonly massUg: Micrograms; readonly reason: string }
  | { readonly do: 'charge'; readonly step: string; readonly residueUg: Micrograms; readonly rinseUg: Micrograms }
  | { readonly do: 'combine'; readonly step: string; readonly residueUg: Micrograms; readonly rinseUg: Micrograms }
  | { readonly do: 'start-step'; readonly step: string }
  | {
      readonly do: 'finish-step'
      readonly step: string
      readonly saw?: string
      readonly checkedBy?: string
      readonly signature?: Signature
      readonly toolRpm?: number
      readonly toolMm?: number
    }
  | { readonly do: 'skip-step'; readonly step: string; readonly reason: string }
  | {
      readonly do: 'pass-gate'
      readonly step: string
      readonly gate: string
      readonly detail: string
      readonly reason: string
    }
  | {
      readonly do: 'read-temperature'
      readonly vessel: string
      readonly temperatureC: number
      readonly step?: string
      readonly source?: Source
      /** Read earlier than it is entered: when (ISO with offset) and why it is late. */
      readonly late?: { readonly occurredAt: string; readonly reason: string }
    }
  | { readonly do: 'change-bath'; readonly vessel: string; readonly what: string }
  | { readonly do: 'tell-surroundings'; readonly about: Surroundings }
  | { readonly do: 'start-timer'; readonly label: string; readonly minutes: number; readonly step?: string }
  | { readonly do: 'acknowledge-timer'; readonly timer: string }
  | {
      readonly do: 'measure'
      readonly result: Bodies['measured']
      /** Read earlier than it is entered: when (ISO with offset) and why it is late. */
      readonly late?: { readonly occurredAt: string; readonly reason: string }
    }
  /** Several results of one pass: all of them are written, or none. */
  | {
      readonly do: 'measure-all'
      readonly results: readonly Bodies['measured'][]
      readonly late?: { readonly occurredAt: string; readonly reason: string }
    }
  | { readonly do: 'adjust'; readonly step: string; readonly netUg: Micrograms; readonly lot?: string }
  | {
      readonly do: 'make-up'
      readonly step: string
      readonly grossUg?: Micrograms
      readonly netUg: Micrograms
      readonly lot?: string
    }
  | { readonly do: 'record-loss'; readonly vessel: string; readonly grossUg: Micrograms }
  | {
      readonly do: 'sample'
      readonly step?: string
      readonly vessel: string
      readonly massUg: Micrograms
      readonly jars: number
      readonly purpose: string
    }
  | {
      readonly do: 'fill'
      readonly step?: string
      readonly vessel: string
      readonly massUg: Micrograms
      readonly units: number
      readonly grossBeforeUg?: Micrograms
      readonly grossAfterUg?: Micrograms
    }
  | { readonly do: 'note'; readonly text: string; readonly step?: string; readonly deviation?: string }
  | { readonly do: 'plan-stability'; readonly plan: StabilityPlan }
  | { readonly do: 'count-cycle'; readonly condition: string }
  /** What was read of one jar; its units are the plan's. */
  | {
      readonly do: 'pull'
      readonly condition: string
      readonly at: number
      readonly readings: readonly JarResult[]
      readonly late?: { readonly occurredAt: string; readonly reason: string }
      /** What was asked about and is meant all the same. */
      readonly meant?: readonly ('PULLED_ALREADY' | 'PULL_EARLY')[]
    }
  /** Opens a closed batch again; each step gets its id when it is decided. */
  | {
      readonly do: 'rework'
      readonly reason: string
      readonly returned?: { readonly vessel: string; readonly massUg: Micrograms }
      readonly steps: readonly ReworkStep[]
    }
  | { readonly do: 'hand-over'; readonly to: string }
  | { readonly do: 'park'; readonly reason: string }
  | { readonly do: 'resume' }
  | { readonly do: 'notice-clock'; readonly byMs: number }
  | { readonly do: 'abandon'; readonly reason: string }
  | {
      readonly do: 'close'
      readonly decision: Disposition
      readonly note?: string
      /** They cover the decision and all before it. */
      readonly signatures?: Signatures
    }
  | { readonly do: 'sign'; readonly signatures: Signatures }
  /** The tablet's own signature: nobody asks for it. */
  | { readonly do: 'sign-head'; readonly signed: DeviceSigned }
  | { readonly do: 'picture'; readonly picture: Bodies['pictured'] }

/** What a second person may have to look at. */
export type Checked = Extract<Intention, { do: 'weigh' | 'finish-step' }>

/** A number or what was seen, for one measure of the plan. */
export interface JarResult {
  readonly measure: string
  readonly value?: number
  /** Each reading, where there were several: their mean counts. */
  readonly readings?: readonly number[]
  readonly how?: HowRead
  readonly sampleC?: number
  readonly text?: string
  readonly good?: boolean
}

/** What a rework asks for, before it has a place in the batch. */
export type ReworkStep = { readonly vessel: string; readonly title?: string } & (
  | Extract<StepKind, { kind: 'mix' | 'adjust' | 'heat' | 'cool' | 'hold' | 'rest' | 'measure' | 'note' | 'fill' }>
  | {
      readonly kind: 'add'
      readonly line?: string
      readonly name: string
      readonly massUg: Micrograms
      /** Of what is not in the formula: as it is known, with its lots in order of use. */
      readonly material?: Material
      readonly lots?: readonly Lot[]
    }
)

/** Time and names come in from outside. */
export interface Context {
  readonly nowMs: number
  readonly by: string
  readonly newId: () => string
  /** True of a person who signs with a PIN; nobody does where it is absent. */
  readonly signsWithPin?: (person: string) => boolean
}
