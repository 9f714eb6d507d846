import * as v from 'valibot'
import { expect } from 'vitest'
import { type LabelEntry, labelOf } from '../../src/batch/label-draft'
import { expectAbsolute } from './close'

const percents = v.record(v.string(), v.number())
const givenShape = v.object({
  contact: v.picklist(['leave-on', 'rinse-off']),
  materials: v.array(
    v.object({ name: v.string(), percent: v.number(), inci: percents, allergens: v.optional(percents, {}) }),
  ),
})
const entries = v.array(v.tuple([v.string(), v.number()]))
const expectedShape = v.object({ above: entries, upToOne: entries, colourants: entries, unnamed: v.number() })

export function checkLabel(given: unknown, expected: unknown): void {
  const { contact, materials } = v.parse(givenShape, given)
  const answer = v.parse(expectedShape, expected)
  const partsOf = (parts: Readonly<Record<string, number>>) =>
    Object.entries(parts).map(([name, percent]) => ({ name, fraction: percent / 100 }))
  const draft = labelOf(
    materials.map(({ name, percent, inci, allergens }) => ({
      share: percent / 100,
      material: { id: name, name, function: '', inci: partsOf(inci), allergenParts: partsOf(allergens) },
    })),
    contact,
  )
  for (const group of ['above', 'upToOne', 'colourants'] as const) compare(draft[group], answer[group], group)
  expectAbsolute(draft.unnamed * 100, answer.unnamed, 1e-9, 'unnamed')
}

function compare(got: readonly LabelEntry[], expected: v.InferOutput<typeof entries>, group: string): void {
  expect(got.map(({ name }) => name)).toEqual(expected.map(([name]) => name))
  for (const [index, [name, percent]] of expected.entries())
    expectAbsolute((got[index]?.fraction ?? 0) * 100, percent, 1e-9, `${group} ${name}`)
}
