import type { App } from '../../app/app'
import type { FieldSpec } from '../../app/forms/field-spec'
import { createForm, type FormModel } from '../../app/forms/form-model'
import { balanceSchema, keptVesselSchema, personSchema } from '../../batch/schemas/catalogue'
import { readDocument } from '../../batch/schemas/read-document'

const personFields: readonly FieldSpec[] = [
  { key: 'initials', label: 'Initials', hint: 'as they stand beside every entry', kind: 'text', longest: 6 },
  { key: 'name', label: 'Name', kind: 'text', longest: 80 },
]

const balanceFields: readonly FieldSpec[] = [
  { key: 'name', label: 'Name', kind: 'text', longest: 80 },
  { key: 'stepUg', label: 'Readability d', hint: 'its last digit', kind: 'mass', zero: false },
  { key: 'capacityUg', label: 'Capacity', hint: 'with a unit, if not grams: 2.2 kg', kind: 'mass', zero: false },
  {
    key: 'repeatabilityUg',
    label: 'Repeatability s',
    hint: 'a standard deviation: from its data sheet, or ten weighings of one thing',
    kind: 'mass',
  },
  { key: 'linearityUg', label: 'Linearity', kind: 'mass', optional: true },
  { key: 'checkEveryHours', label: 'Checked every', kind: 'number', unit: 'h', min: 0, max: 8760, optional: true },
]

const vesselFields: readonly FieldSpec[] = [
  { key: 'name', label: 'Name', kind: 'text', longest: 80 },
  { key: 'tareUg', label: 'Empty, with what stays in it', kind: 'mass', optional: true },
  { key: 'capacityUg', label: 'Holds at most', hint: 'with a unit, if not grams: 2 kg', kind: 'mass', zero: false },
  {
    key: 'stirsUg.min',
    label: 'Its stirrer moves at least',
    hint: 'less is not reached',
    kind: 'mass',
    optional: true,
  },
  {
    key: 'stirsUg.max',
    label: 'Its stirrer moves at most',
    hint: 'more is not turned over',
    kind: 'mass',
    optional: true,
  },
]

/** The three lists of Setup that are kept in the same way. */
export type Register = 'person' | 'balance' | 'vessel'

/** The form of one entry of a list; a new one where there is none of that id. */
export function registerForm(app: App, register: Register, id: string): FormModel {
  const { people, balances, vessels } = app.catalogue
  const draft = `${register}:${id}`
  switch (register) {
    case 'person':
      return createForm(app, {
        specs: personFields,
        document: people.value.get(id) ?? { id },
        draft,
        write: async (typed) => {
          const read = readDocument(personSchema, typed)
          if (!read.ok) return sentenceAt(read.refusal)
          const refused = await app.catalogue.save('person', read.value)
          // The first person is the one who is typing.
          if (refused === null && app.settings.person.value === null) await app.settings.change({ person: id })
          return refused
        },
      })
    case 'balance':
      return createForm(app, {
        specs: balanceFields,
        document: balances.value.get(id) ?? { id },
        draft,
        write: async (typed) => {
          const read = readDocument(balanceSchema, typed)
          return read.ok ? app.catalogue.save('balance', read.value) : sentenceAt(read.refusal)
        },
      })
    case 'vessel':
      return createForm(app, {
        specs: vesselFields,
        document: vessels.value.get(id) ?? { id },
        draft,
        write: async (typed) => {
          const read = readDocument(keptVesselSchema, withOpenEnds(typed))
          return read.ok ? app.catalogue.save('vessel', read.value) : sentenceAt(read.refusal)
        },
      })
  }
}

/** Puts an entry away, or takes it out again: batches that name it keep it. */
export async function putAway(app: App, register: Register, id: string, archived: boolean): Promise<void> {
  const { people, balances, vessels } = app.catalogue
  const person = people.value.get(id)
  const balance = balances.value.get(id)
  const vessel = vessels.value.get(id)
  if (register === 'person' && person) await app.catalogue.save('person', { ...person, archived })
  if (register === 'balance' && balance) await app.catalogue.save('balance', { ...balance, archived })
  if (register === 'vessel' && vessel) await app.catalogue.save('vessel', { ...vessel, archived })
}

/** One end of what a stirrer moves may be left out: then it is nothing, or all that the vessel holds. */
function withOpenEnds({ stirsUg, ...vessel }: Record<string, unknown>): Record<string, unknown> {
  return stirsUg === undefined
    ? vessel
    : { ...vessel, stirsUg: { min: 0, max: vessel.capacityUg, ...(stirsUg as object) } }
}

const sentenceAt = ({ path, wanted }: { path: string; wanted: string }): string => `${path} should be ${wanted}.`
