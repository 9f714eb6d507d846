import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { guessMapping } from '../../../src/app/import/table/columns'
import { readSheetFile } from '../../../src/app/import/table/read-file'
import { readTable } from '../../../src/app/import/table/read-table'
import { nothingSettled } from '../../../src/app/import/table/settled'
import { demonstrationCatalogue } from '../../house/demonstration/catalogue'
import { xlsxOf } from '../../support/xlsx'
import { propertyRuns } from '../runs'

/** Deep runs read thousands of files. */
const patience = 120_000

const { materials } = demonstrationCatalogue

/** One formula: of each line its phase, its material and its share in ten-thousandths of a percent; the first is the rest. */
const aFormula = fc
  .uniqueArray(fc.nat(materials.length - 1), { minLength: 4, maxLength: 10 })
  .chain((picked) =>
    fc.record({
      lines: fc.tuple(
        ...picked.map((at) => fc.record({ at: fc.constant(at), share: fc.integer({ min: 1, max: 90_000 }) })),
      ),
      cuts: fc.tuple(fc.integer({ min: 1, max: picked.length - 1 }), fc.integer({ min: 1, max: picked.length - 1 })),
    }),
  )
  .map(({ lines, cuts }) => {
    const others = lines.slice(1).reduce((sum, { share }) => sum + share, 0)
    return lines.map(({ at, share }, index) => ({
      phase: 'ABC'[Number(index >= Math.min(...cuts)) + Number(index >= Math.max(...cuts))] ?? 'A',
      material: materials[at],
      share: index === 0 ? 1_000_000 - others : share,
    }))
  })

/** One way of writing it down. */
const aStyle = fc.record({
  order: fc.shuffledSubarray(['phase', 'name', 'inci', 'percent', 'function', 'supplier', 'cost', 'remark', 'empty'], {
    minLength: 9,
  }),
  mark: fc.constantFrom('.' as const, ',' as const),
  unit: fc.constantFrom('percent', 'signs', 'fraction', 'grams'),
  makesUp: fc.constantFrom('', 'q.s.', 'qs 100', 'q.s. to 100', 'to 100', 'ad 100'),
  phases: fc.constantFrom('each row', 'merged', 'rows'),
  words: fc.nat(3),
  title: fc.boolean(),
  total: fc.boolean(),
  note: fc.boolean(),
  as: fc.constantFrom('tsv', 'csv', 'html', 'xlsx'),
})

type Of<A> = A extends fc.Arbitrary<infer T> ? T : never
type Written = Of<typeof aFormula>
type Style = Of<typeof aStyle>

describe('any spreadsheet of a formula', () => {
  it(
    '[I54] columns in any order, further columns, both decimal marks and every way of writing give the same formula',
    async () => {
      await fc.assert(
        fc.asyncProperty(aFormula, aStyle, async (formula, style) => {
          const read = await readSheetFile(fileOf(rowsOf(formula, style), style))
          if (!read.ok) throw new Error(read.refusal.code)
          const [sheet] = read.value
          if (sheet === undefined) throw new Error('there was no sheet')
          const table = readTable(sheet, guessMapping(sheet), nothingSettled)

          expect([...table.problems, ...table.rows.flatMap(({ problems }) => problems)]).toEqual([])
          const fills = fillsUp(style)
          expect(
            table.rows.flatMap(({ line, phase }) =>
              line ? [[table.phases[phase]?.letter, line.name, line.inci, line.function, amountOf(line.amount)]] : [],
            ),
          ).toEqual(
            formula.map(({ phase, material, share }, at) => [
              phase,
              material?.name,
              material?.inci.map(({ name }) => name).join(', '),
              material?.function,
              fills && at === 0 ? 'q.s.' : share,
            ]),
          )
        }),
        propertyRuns,
      )
    },
    patience,
  )
})

/** A column of grams that has an open line says with its total what it makes; without one that line is a figure. */
const fillsUp = ({ makesUp, unit, total }: Style): boolean =>
  makesUp !== '' && unit !== 'fraction' && (unit !== 'grams' || total)

const amountOf = (amount: { kind: string; fraction?: number } | null): unknown =>
  amount?.kind === 'fraction' ? Math.round((amount.fraction ?? 0) * 1e6) : amount?.kind === 'qs' ? 'q.s.' : amount

const headings: Readonly<Record<string, readonly string[]>> = {
  phase: ['Phase', 'Part', 'PHASE', 'Stage'],
  name: ['Ingredient', 'Raw material', 'Trade name', 'Rohstoff'],
  inci: ['INCI', 'INCI name', 'Ingredient (INCI)', 'INCI Name'],
  function: ['Function', 'Purpose', 'What it does', 'Funktion'],
  supplier: ['Supplier', 'Vendor', 'Source', 'Lieferant'],
  cost: ['Cost / kg', 'Price', 'Preis', 'Cost'],
  remark: ['Comment', 'Notes', 'Remarks', 'Bemerkung'],
  empty: ['', '', '', ''],
}

const amountHeadings: Readonly<Record<string, readonly string[]>> = {
  percent: ['%', '% w/w', 'Percent', 'Anteil %'],
  signs: ['Amount', 'Share', '%', 'Menge'],
  fraction: ['Fraction', 'Share', '%', 'Proportion'],
  grams: ['g', 'Mass (g)', 'Weight', 'Grams'],
}

function rowsOf(formula: Written, style: Style): string[][] {
  const { order, unit, words, makesUp } = style
  const fills = fillsUp(style)
  const row = (of: Readonly<Record<string, string>>) => order.map((column) => of[column] ?? '')
  const heading = row(
    Object.fromEntries(order.map((each) => [each, headings[each]?.[words] ?? amountHeadings[unit]?.[words] ?? ''])),
  )
  const rows = formula.flatMap(({ phase, material, share }, at) => {
    const isFirst = formula[at - 1]?.phase !== phase
    const line = row({
      phase: style.phases === 'rows' || (style.phases === 'merged' && !isFirst) ? '' : phase,
      name: material?.name ?? '',
      inci: material?.inci.map(({ name }) => name).join(', ') ?? '',
      function: material?.function ?? '',
      percent: fills && at === 0 ? makesUp : figure(share, style),
      supplier: ['Ferrow Ingredients', 'Tolmin Botanicals', 'Aske & Daughters'][at % 3] ?? '',
      cost: figure(40_000 + at * 12_345, { ...style, unit: 'percent' }),
      remark: at % 4 === 1 ? 'sieve first' : '',
    })
    return style.phases === 'rows' && isFirst ? [row({ name: `Phase ${phase}` }), line] : [line]
  })
  return [
    ...(style.title ? [row({ [order[0] ?? '']: 'Oat barrier body lotion QW-LOT-01' }), row({})] : []),
    heading,
    ...rows,
    ...(style.total ? [row({ name: 'Total', percent: figure(1_000_000, style) })] : []),
    ...(style.note ? [row({}), row({ [order[0] ?? '']: 'Heat both phases to 75 °C before combining.' })] : []),
  ]
}

/** Ten-thousandths of a percent as the style writes them; grams are of a batch of 250 g. */
function figure(share: number, { unit, mark }: Pick<Style, 'unit' | 'mark'>): string {
  const value = { percent: share / 1e4, signs: share / 1e4, fraction: share / 1e6, grams: (share / 1e6) * 250 }[unit]
  return `${Number(value.toFixed(8))}`.replace('.', mark) + (unit === 'signs' ? ' %' : '')
}

function fileOf(rows: readonly (readonly string[])[], { as, mark }: Style): File {
  switch (as) {
    case 'tsv':
      return new File([rows.map((row) => row.join('\t')).join('\r\n')], 'formula.tsv')
    case 'csv': {
      const cell = (text: string) => (/[",;\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
      const sign = mark === ',' ? ';' : ','
      return new File([rows.map((row) => row.map(cell).join(sign)).join('\n')], 'formula.csv')
    }
    case 'html': {
      const cell = (text: string) => `<td class=x>${text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</td>`
      return new File([`<table>${rows.map((row) => `<tr>${row.map(cell).join('')}</tr>`).join('\n')}</table>`], 'f.htm')
    }
    case 'xlsx': {
      const asCell = (text: string) => (/^\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : text)
      return new File([xlsxOf({ sheets: [{ name: 'Formula', rows: rows.map((row) => row.map(asCell)) }] })], 'f.xlsx')
    }
  }
}
