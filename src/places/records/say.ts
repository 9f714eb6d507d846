import type { Format } from '../../app/format'
import type { Say } from '../../batch/entry-phrases'
import { commonStep } from '../../batch/entry-phrases'
import { wordsOf } from '../../batch/entry-words'
import type { BatchRecord } from '../../batch/record'
import { nameOfLine, titleOf } from '../../batch/wording'
import { figure } from './figure'

/** Names and figures of one record, as this person writes them. */
export function sayOf(record: BatchRecord, format: Format): Say {
  const { header } = record
  const steps = new Map(record.allSteps.map((planned) => [planned.id, titleOf(planned.step, header)]))
  const vessels = new Map(record.equipment.vessels.map(({ id, name }) => [id, name]))
  const strange = new Map([
    ...record.unplanned.map(({ component, name }) => [component, name] as const),
    ...record.reworks.flatMap(({ materials }) => materials.map(({ line, name }) => [line, name] as const)),
  ])
  const people = [
    header.people.performs,
    ...(header.people.checks ? [header.people.checks] : []),
    ...header.people.others,
  ]
  const initials = new Map(people.map((person) => [person.id, person.initials]))
  const entries = new Map(record.trail.map((row) => [row.entry, row]))
  const say: Say = {
    mass: (massUg, stepUg = commonStep(massUg)) => format.massWithUnit(massUg, stepUg),
    number: (value) => figure(value, format),
    percent: (fraction) => format.percent(fraction, 0),
    duration: format.duration,
    person: (id) => initials.get(id) ?? id,
    line: (id) => strange.get(id) ?? nameOfLine(header, id),
    step: (id) => steps.get(id) ?? id,
    vessel: (id) => vessels.get(id) ?? id,
    lot: (id) => record.lotCodes.get(id) ?? id,
    entry: (id) => {
      const row = entries.get(id)
      return row === undefined ? null : wordsOf(row.event, { ...say, entry: () => null }).replace(/\.$/, '')
    },
  }
  return say
}
