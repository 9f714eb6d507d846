import type { Format } from '../../../app/format'
import type { Check } from '../../../batch/formula'
import type { BatchState } from '../../../batch/state'
import type { Micrograms } from '../../../trade/mass'
import type { ReadingRow } from './reading-list'

/** Readings of the check and portions of the step, as they happened, oldest first. */
export function adjustRows(
  state: BatchState,
  step: { readonly id: string },
  check: Check,
  format: Format,
  stepUg: Micrograms,
): readonly ReadingRow[] {
  const readings = state.measurements
    .filter(({ body }) => body.check === check.id && body.value !== undefined)
    .map((event) => ({ event, text: `${check.label} ${format.number(event.body.value ?? 0)}`, note: '' }))
  const portions = (state.steps.get(step.id)?.portions ?? []).map((event) => ({
    event,
    text: `+ ${format.massWithUnit(event.body.netUg, stepUg)}`,
    note: 'in',
  }))
  return [...readings, ...portions]
    .sort((a, b) => a.event.lamport - b.event.lamport)
    .map(({ event, text, note }) => ({ id: event.id, at: format.time(Date.parse(event.at)), text, note }))
}
