import { type Format, useFormat } from '../../../app/format'
import { sentenceOf } from '../../../app/refusals'
import { vesselNow } from '../../../batch/progress'
import type { BatchState } from '../../../batch/state'
import { nameOfVessel } from '../../../batch/vessel-name'
import type { Dimension } from '../../../trade/units'
import { useRun } from '../run-context'
import type { RunModel } from '../run-model'
import type { Typed } from '../typed'

interface StepTools {
  readonly run: RunModel
  readonly state: BatchState
  readonly format: Format
  readonly nowMs: number
  /** Where the contents of the step's vessel are now, and what that is called. */
  readonly vessel: string
  readonly vesselName: string
  /** The typed text of a field. */
  readonly text: (field: string) => string
  readonly mass: (field: string) => Typed
  /** With a dimension, such as temperature, its units may be typed behind the figure. */
  readonly number: (field: string, dimension?: Dimension) => Typed
  /** Empties fields that have been recorded. */
  readonly clear: (...fields: readonly string[]) => void
}

/** What every card of a step needs at hand. */
export function useStep(step: { readonly id: string; readonly vessel: string }): StepTools {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const vessel = vesselNow(state, step.vessel)
  const { fields } = run.draft.value
  return {
    run,
    state,
    format,
    nowMs: run.app.nowMs.value,
    vessel,
    vesselName: nameOfVessel(state, vessel),
    text: (field) => fields[field] ?? '',
    mass: (field) => run.reckoner.mass(fields[field] ?? '', { negative: false }),
    number: (field, dimension) => run.reckoner.number(fields[field] ?? '', {}, dimension),
    clear: (...names) => {
      // A figure typed while this one was being written is the next one.
      const now = run.drafts.of(step.id).fields
      for (const name of names) if (now[name] === fields[name]) run.drafts.setField(step.id, name, '')
    },
  }
}

export const valueOr = (typed: Typed, otherwise: number): number => (typed.kind === 'number' ? typed.value : otherwise)

/** The sentence at a field, where what is typed is wrong. */
export const errorOf = (typed: Typed): string | undefined =>
  typed.kind === 'bad' ? sentenceOf(typed.refusal) : undefined
