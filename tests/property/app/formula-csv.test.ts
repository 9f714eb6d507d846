import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formulaCsv } from '../../../src/app/import/formula-csv'
import { guessMapping } from '../../../src/app/import/table/columns'
import { readTable } from '../../../src/app/import/table/read-table'
import { readTextSheets } from '../../../src/app/import/table/read-text'
import { nothingSettled } from '../../../src/app/import/table/settled'
import type { Material } from '../../../src/batch/catalogue'
import type { Formula, Line, Revision } from '../../../src/batch/formula'
import { propertyRuns } from '../runs'

/** Deep runs read thousands of files. */
const patience = 120_000

/** Any text that a name can be: of one line, trimmed, with separators, quotes and signs that sums begin with. */
const aText = (maxLength: number) =>
  fc
    .oneof(
      fc.string({ unit: 'grapheme', minLength: 1, maxLength }),
      fc.string({ unit: fc.constantFrom(...`=+-@'",;|\t<>()%0. aÄ`), minLength: 1, maxLength }),
      fc.constantFrom('=1+1', "'=x", 'Total', 'Phase A', 'q.s.', '<table>', 'Water, "purified"', '-', 'note', '0.5'),
    )
    // biome-ignore lint/suspicious/noControlCharactersInRegex: a name of one line has none of them
    .map((text) => text.replace(/[\u0000-\u001f\u007f\u200b\u2060\ufeff\u00a0\u2007\u202f]/g, ' ').trim())
    .filter((text) => text !== '')

/** A share as it can be typed: to a hundred-thousandth of a percent. */
const aShare = (most: number) => fc.integer({ min: 1, max: most * 1e7 }).map((n) => n / 1e7)

const anAmount: fc.Arbitrary<Line['amount']> = fc.oneof(
  { weight: 4, arbitrary: aShare(0.05).map((fraction) => ({ kind: 'fraction' as const, fraction })) },
  fc
    .tuple(aShare(0.01), aShare(0.01), aShare(0.01))
    .map((three) => three.sort((a, b) => a - b))
    .map(([min = 0, expected = 0, max = 0]) => ({ kind: 'as-needed' as const, expected, min, max })),
)

const aTable = fc.record({
  name: aText(60),
  note: fc.array(aText(80), { maxLength: 3 }),
  held: fc.option(aShare(0.1), { nil: undefined }),
  mark: fc.constantFrom('.' as const, ',' as const),
  phases: fc.uniqueArray(
    fc.record({
      letter: aText(4).filter((text) => text.length <= 4),
      name: aText(30),
      lines: fc.array(
        fc.record({ name: aText(60), inci: fc.option(aText(40)), does: fc.option(aText(20)), amount: anAmount }),
        {
          minLength: 1,
          maxLength: 5,
        },
      ),
    }),
    { minLength: 1, maxLength: 4, selector: ({ letter }) => letter },
  ),
})

describe('a formula as a table', () => {
  it(
    '[I53] written and brought in again it has the same phases, names, INCI names and shares',
    async () => {
      await fc.assert(
        fc.asyncProperty(aTable, async ({ name, note, held, mark, phases }) => {
          const materials = new Map<string, Material>()
          const filler: Line['amount'] = { kind: 'qs', portions: [], ...(held === undefined ? {} : { heldBack: held }) }
          const made = phases.map(({ letter, name: title, lines }, at) => ({
            letter,
            name: title,
            lines: lines.map(({ name: material, inci, does, amount }, index): Line => {
              const id = `${at}-${index}`
              const parts = inci === null ? [] : [{ name: inci, fraction: 1 }]
              materials.set(id, { id, name: material, inci: parts, function: does ?? '' })
              return { id, materialId: id, amount: at === 0 && index === 0 ? filler : amount }
            }),
          }))
          const revision: Revision = {
            number: 3,
            note: note.join('\n'),
            usualSizeUg: 500_000_000,
            phases: made,
            procedure: [],
            specification: [],
            vessels: [],
            preflight: [],
          }
          const formula: Formula = {
            id: 'f',
            code: 'QW-1',
            name,
            nickname: 'X',
            contact: 'leave-on',
            revisions: [revision],
          }

          const [sheet] = await sheetsOf(await formulaCsv(formula, revision, materials, mark))
          if (sheet === undefined) throw new Error('there was no sheet')
          const table = readTable(sheet, guessMapping(sheet), nothingSettled)

          expect(table.rows.flatMap(({ problems }) => problems)).toEqual([])
          expect(table.title).toBe(name)
          expect(table.notes.join('\n')).toBe(note.join('\n'))
          expect(table.phases).toEqual(phases.map(({ letter, name: title }) => ({ letter, name: title })))
          const lines = table.rows.flatMap(({ line, phase }) => (line ? [{ ...line, phase }] : []))
          expect(
            lines.map(({ phase, name: material, inci, function: does, amount }) => ({
              phase,
              material,
              inci,
              does,
              amount,
            })),
          ).toEqual(
            made.flatMap((phase, at) =>
              phase.lines.map(({ materialId, amount }) => {
                const { portions: _ofTheSteps, ...said } = amount.kind === 'qs' ? amount : { ...amount, portions: [] }
                const material = materials.get(materialId)
                return {
                  phase: at,
                  material: material?.name,
                  inci: material?.inci[0]?.name ?? '',
                  does: material?.function,
                  amount: said,
                }
              }),
            ),
          )
        }),
        propertyRuns,
      )
    },
    patience,
  )
})

async function sheetsOf(text: string) {
  const read = await readTextSheets(text, 'formula')
  if (!read.ok) throw new Error(read.refusal.code)
  return read.value
}
