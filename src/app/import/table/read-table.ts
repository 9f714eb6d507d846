import type { Micrograms } from '../../../trade/mass'
import { readMass } from '../../../trade/number-text'
import { shareOut } from '../../../trade/share-out'
import { headingTotal } from './headings'
import { type CellAmount, readLineAmount } from './line-amounts'
import type { Mapping } from './mapping'
import { type PlainRow, readRows, textAs } from './read-rows'
import type { Settled } from './settled'
import type { Sheet } from './sheet'
import { problemsOf } from './sums'
import type { RowProblem } from './table-problem'
import type { ReadLine, ReadRow, ReadTable } from './understood'

/** Fractions are kept to 10⁻⁸ where they come from masses: finer than any balance tells. */
const parts = 100_000_000

/** Everything that a sheet says, read in the way that `mapping` tells, with what the person has settled. */
export function readTable(sheet: Sheet, mapping: Mapping, settled: Settled): ReadTable {
  const { rows, phases } = readRows(sheet, mapping, settled)
  const headings = sheet.rows[mapping.heading] ?? []
  const read = rows.map((row) => (row.kind === 'line' ? readLine(row, mapping, headings, settled) : plain(row)))
  const totalUg = totalOf(read, mapping, headings, settled)
  const shared = withFractions(read, totalUg)
  const checked = problemsOf(shared, { phases, mapping, totalUg })
  return {
    rows: checked.rows,
    phases,
    problems: checked.problems,
    totalUg,
    title: rows.find(({ kind }) => kind === 'title')?.cells.find((text) => text !== '') ?? '',
    notes: notesOf(checked.rows),
  }
}

/** A line whose mass is still to be set against the whole. */
type HalfRead = Omit<ReadRow, 'line'> & { readonly line: HalfLine | null }
type HalfLine = Omit<ReadLine, 'amount'> & { readonly amount: CellAmount | null }

const plain = ({ row, kind, phase, cells }: PlainRow): HalfRead => ({
  row,
  kind,
  phase,
  cells,
  line: null,
  problems: [],
})

function readLine(row: PlainRow, mapping: Mapping, headings: readonly string[], settled: Settled): HalfRead {
  const text = (role: Parameters<typeof textAs>[2]) => oneLine(textAs(mapping, row.cells, role), mapping)
  const name = text('name') || text('inci')
  const amount = readLineAmount(row.cells, mapping, headings)
  const fills = settled.fill === row.row
  const problems: RowProblem[] = []
  const nameColumn = Math.max(mapping.roles.indexOf('name'), mapping.roles.indexOf('inci'))
  if (name === '') problems.push({ code: 'LINE_NO_NAME', row: row.row, column: nameColumn === -1 ? null : nameColumn })
  if (Math.max(name.length, text('inci').length, text('function').length) > 200)
    problems.push({ code: 'LINE_NAME_LONG', row: row.row, column: nameColumn === -1 ? null : nameColumn })
  if (!amount.ok && !fills) problems.push({ ...amount.refusal, row: row.row })
  const notes = mapping.roles.flatMap((role, column) => (role === 'note' ? (row.cells[column] ?? '') : []))
  return {
    ...plain(row),
    problems,
    line: {
      name,
      inci: text('inci'),
      function: text('function'),
      supplier: text('supplier'),
      note: notes.filter((each) => each !== '').join(', '),
      amount: fills ? { kind: 'qs' } : amount.ok ? amount.value : null,
    },
  }
}

/** A name that a cell broke over lines is one line; a table of this app is taken to the letter. */
const oneLine = (text: string, { isOwn }: Mapping): string => (isOwn ? text : text.replace(/\s+/g, ' '))

/** What the masses make: as typed, as the total row says, as the heading says, or as they add up. */
function totalOf(
  rows: readonly HalfRead[],
  mapping: Mapping,
  headings: readonly string[],
  { total }: Settled,
): Micrograms | null {
  const grams = mapping.roles.indexOf('grams')
  if (grams === -1) return null
  const typed = readMass(total, { negative: false, zero: false })
  if (typed.ok) return typed.value
  const massOf = (cells: readonly string[]): Micrograms | null => {
    const read = readLineAmount(
      cells,
      { ...mapping, roles: mapping.roles.map((role) => (role === 'percent' ? 'ignore' : role)) },
      headings,
    )
    return read.ok && read.value.kind === 'mass' ? read.value.massUg : null
  }
  const lines = rows.filter(({ kind }) => kind === 'line').map(({ cells }) => massOf(cells))
  const sum = lines.reduce<number>((all, each) => all + (each ?? 0), 0)
  const isComplete = lines.length > 0 && lines.every((each) => each !== null)
  if (isComplete) return sum
  const stated = rows
    .filter(({ kind }) => kind === 'total')
    .map(({ cells }) => massOf(cells))
    .findLast((each) => each !== null)
  if (stated != null && stated > sum) return stated
  const named = readMass(headingTotal(headings[grams] ?? '') ?? '')
  return named.ok && named.value > sum ? named.value : null
}

/** Masses as fractions of the whole. Where they make the whole by themselves their fractions sum to one exactly. */
function withFractions(rows: readonly HalfRead[], totalUg: Micrograms | null): ReadRow[] {
  const masses = rows.map(({ line }) => (line?.amount?.kind === 'mass' ? line.amount.massUg : 0))
  const sum = masses.reduce((all, each) => all + each, 0)
  const shares = totalUg !== null && sum === totalUg && sum > 0 ? shareOut(parts, masses) : null
  return rows.map(({ line, ...row }, at) => {
    if (line === null) return { ...row, line }
    const { amount, ...rest } = line
    if (amount?.kind !== 'mass') return { ...row, line: { ...rest, amount } }
    const whole = shares?.[at] ?? (totalUg === null ? null : Math.round((amount.massUg / totalUg) * parts))
    return { ...row, line: { ...rest, amount: whole === null ? null : { kind: 'fraction', fraction: whole / parts } } }
  })
}

/** Notes around the table, then what stands beside its lines, each with the name of its line. */
function notesOf(rows: readonly ReadRow[]): string[] {
  const around = rows
    .filter(({ kind }) => kind === 'note')
    .map(({ cells }) => cells.filter((text) => text !== '').join(' '))
  const beside = rows.flatMap(({ line }) => (line?.note ? `${line.name}: ${line.note}` : []))
  const from = rows.flatMap(({ line }) => (line?.supplier ? `${line.name} from ${line.supplier}` : []))
  return [...around, ...beside, ...from]
}
