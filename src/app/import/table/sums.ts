import { gramsFromMicrograms } from '../../../trade/mass-ratio'
import { readLineAmount, readShare } from './line-amounts'
import type { Mapping } from './mapping'
import type { PhasesFound } from './phases'
import type { RowProblem, TableProblem } from './table-problem'
import type { ReadRow, ReadTable } from './understood'

/** What binary fractions can be off by; anything more was typed. */
const wholeWithin = 1e-9
/** What a total that is shown with two decimals of a percent can be off by. */
const shownWithin = 5e-5

const most = { lines: 200, phases: 26 }

/** The rows with what their sums have against them, and what stands against the table as a whole. */
export function problemsOf(
  read: readonly ReadRow[],
  {
    phases,
    mapping,
    totalUg,
  }: { readonly phases: PhasesFound; readonly mapping: Mapping } & Pick<ReadTable, 'totalUg'>,
): Pick<ReadTable, 'rows' | 'problems'> {
  const fillers = read.filter(({ line }) => line?.amount?.kind === 'qs')
  const [first] = fillers
  const rows = read.map((row): ReadRow => {
    const twice: RowProblem[] =
      first && row !== first && fillers.includes(row)
        ? [{ code: 'LINE_QS_TWICE', row: row.row, column: columnOf(mapping), first: first.row }]
        : []
    return { ...row, problems: [...row.problems, ...twice, ...totalProblems(row, read, mapping, totalUg)] }
  })
  return { rows, problems: tableProblems(read, phases, mapping, totalUg) }
}

const columnOf = ({ roles }: Mapping): number | null => {
  const column = roles.includes('percent') ? roles.indexOf('percent') : roles.indexOf('grams')
  return column === -1 ? null : column
}

function tableProblems(
  rows: readonly ReadRow[],
  phases: PhasesFound,
  { roles }: Mapping,
  totalUg: number | null,
): TableProblem[] {
  if (!roles.includes('name') && !roles.includes('inci')) return [{ code: 'TABLE_NO_NAMES' }]
  if (!roles.includes('percent') && !roles.includes('grams')) return [{ code: 'TABLE_NO_AMOUNTS' }]
  const lines = rows.flatMap(({ line }) => line ?? [])
  if (lines.length === 0) return [{ code: 'TABLE_NO_LINES' }]
  if (lines.length > most.lines) return [{ code: 'TABLE_TOO_MANY_LINES', lines: lines.length, most: most.lines }]
  if (phases.length > most.phases) return [{ code: 'TABLE_TOO_MANY_PHASES', phases: phases.length, most: most.phases }]
  if (!roles.includes('percent') && totalUg === null) return [{ code: 'TABLE_TOTAL_UNKNOWN' }]
  // The sum tells nothing while a line is still to be settled.
  if (lines.some(({ amount }) => amount === null)) return []
  const sum = sumOf(rows)
  const filler = rows.find(({ line }) => line?.amount?.kind === 'qs')
  if (filler) return sum >= 1 - wholeWithin ? [{ code: 'TABLE_QS_NEGATIVE', row: filler.row, others: sum }] : []
  return Math.abs(sum - 1) > wholeWithin ? [{ code: 'TABLE_NOT_WHOLE', total: sum }] : []
}

/** A total row, or a phase that says its own sum, against the lines it is of. */
function totalProblems(row: ReadRow, rows: readonly ReadRow[], mapping: Mapping, totalUg: number | null): RowProblem[] {
  if (row.kind !== 'total' && row.kind !== 'phase') return []
  const column = columnOf(mapping)
  if (column === null) return []
  const stated = statedOf(row, column, mapping, totalUg)
  if (stated === null || rows.some(({ line }) => line !== null && line.amount === null)) return []
  const ofPhase = rows.filter(({ phase }) => phase === row.phase)
  const above = rows.filter((each) => each.row < row.row)
  const candidates = row.kind === 'phase' ? [ofPhase] : [rows, above, ofPhase]
  if (candidates.some((each) => fits(stated, each))) return []
  const isPart = row.kind === 'phase' || row.cells.some((text) => /sub|phase|part/i.test(text))
  const sum = sumOf(isPart ? ofPhase : rows)
  const unit = mapping.roles.includes('percent') ? '%' : 'g'
  const scale = unit === '%' ? 1 : gramsFromMicrograms(totalUg ?? 0)
  return [{ code: 'TOTAL_DIFFERS', row: row.row, column, stated: stated * scale, sum: sum * scale, unit }]
}

/** With a q.s. line among them the lines make whatever is stated, from what the others make on. */
const fits = (stated: number, rows: readonly ReadRow[]): boolean =>
  rows.some(({ line }) => line?.amount?.kind === 'qs')
    ? stated > sumOf(rows) && stated <= 1 + shownWithin
    : Math.abs(stated - sumOf(rows)) <= shownWithin

function statedOf({ cells }: ReadRow, column: number, mapping: Mapping, totalUg: number | null): number | null {
  if (mapping.roles[column] === 'percent') {
    // A total may be a little above the whole: 100.02.
    const read = readShare(cells[column] ?? '', column, mapping)
    if (read.ok) return read.value.kind === 'fraction' ? read.value.fraction : null
    if (read.refusal.code !== 'AMOUNT_OVER') return null
    const value = Number((cells[column] ?? '').replace(/[^\d.,]/g, '').replace(',', '.'))
    return Number.isFinite(value) ? value / (mapping.scale === 'fraction' ? 1 : 100) : null
  }
  const read = readLineAmount(cells, mapping, [])
  return read.ok && read.value.kind === 'mass' && totalUg !== null ? read.value.massUg / totalUg : null
}

function sumOf(rows: readonly ReadRow[]): number {
  const sum = rows.reduce((all, { line }) => {
    if (line?.amount?.kind === 'fraction') return all + line.amount.fraction
    return line?.amount?.kind === 'as-needed' ? all + line.amount.expected : all
  }, 0)
  return Number(sum.toFixed(12))
}
