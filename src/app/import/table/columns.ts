import { markOf, readAmountText } from './amount-text'
import { headingRole, isOpenHeading, isOwnHeading, ownRoles } from './headings'
import { looksLikeFunction, looksLikeInci } from './known-names'
import type { ColumnRole, Mapping } from './mapping'
import { isTotalText, readPhaseCell } from './row-words'
import type { Sheet } from './sheet'

/** What the columns of a sheet seem to be, by their headings and by what stands in them, in any order. */
export function guessMapping({ rows }: Sheet): Mapping {
  const own = rows.findIndex((row) => isOwnHeading(row))
  if (own !== -1) return ownMapping(rows, own)
  const heading = headingRowOf(rows)
  const width = rows[0]?.length ?? 0
  const headings = Array.from({ length: width }, (_, column) => namedRole(rows[heading]?.[column] ?? ''))
  const columns = headings.map((named, column) => columnOf(rows, heading, column, named))
  const roles = withContent(withHeadings(columns), columns)
  const [percent, grams] = [columns[roles.indexOf('percent')], columns[roles.indexOf('grams')]]
  const amount = percent ?? grams
  const mark = amount ? markIn(amount, columns) : '.'
  return { heading, roles, mark, scale: percent ? scaleOf(percent, mark) : 'percent', isOwn: false }
}

function ownMapping(rows: Sheet['rows'], heading: number): Mapping {
  const shares = rows.slice(heading + 1).map((row) => row[ownRoles.indexOf('percent')] ?? '')
  const roles = (rows[heading] ?? []).map((_, column) => ownRoles[column] ?? 'ignore')
  return { heading, roles, mark: markOf(shares) ?? seenMark(shares) ?? '.', scale: 'percent', isOwn: true }
}

/**
 * The decimal mark of a column. Where each of its figures could be read either way (1,250) it is a decimal, as typed
 * figures are, but in a column of masses that has whole figures beside them, or where another column tells.
 */
function markIn({ texts, named }: Column, columns: readonly Column[]): '.' | ',' {
  const seen = seenMark(texts) ?? '.'
  const told = markOf(texts)
  if (told !== null || named !== 'grams') return told ?? seen
  const elsewhere = markOf(columns.filter(({ isAmount }) => isAmount).flatMap((each) => each.texts))
  if (elsewhere !== null) return elsewhere
  const hasWhole = texts.some((text) => /^\d+$/.test(text))
  return hasWhole ? (seen === '.' ? ',' : '.') : seen
}

const seenMark = (texts: readonly string[]): '.' | ',' | null => {
  const [, mark] = /\d([.,])\d/.exec(texts.join(' ')) ?? []
  return mark === '.' || mark === ',' ? mark : null
}

interface Column {
  readonly named: ColumnRole | null
  /** The filled cells below the heading. */
  readonly texts: readonly string[]
  readonly isAmount: boolean
  /** Of the rows that have an amount anywhere, so that titles and notes tell nothing. */
  readonly inRows: readonly string[]
}

const namedRole = (heading: string): ColumnRole | null => (isOpenHeading(heading) ? null : headingRole(heading))

function headingRowOf(rows: Sheet['rows']): number {
  const found = rows.slice(0, 40).map((row) => {
    const named = row.map(headingRole).filter((role) => role !== null)
    return named.includes('name') || named.includes('inci') || new Set(named).size > 1 ? new Set(named).size : 0
  })
  const most = Math.max(0, ...found)
  return most === 0 ? -1 : found.indexOf(most)
}

function columnOf(rows: Sheet['rows'], heading: number, column: number, named: ColumnRole | null): Column {
  const below = rows.slice(heading + 1).filter((row) => !row.some(isTotalText))
  const texts = below.map((row) => row[column] ?? '').filter((text) => text !== '')
  const read = texts.filter((text) => readAmountText(text, '.').ok)
  const isAmount = read.length >= 2 && read.length * 2 >= texts.length
  const withAmount = below.filter((row) => row.some((text) => readAmountText(text, '.').ok))
  return { named, texts, isAmount, inRows: withAmount.map((row) => row[column] ?? '').filter((text) => text !== '') }
}

type Roles = (ColumnRole | null)[]

/** The first column of each name has it; an amount without a telling name is left to its content. */
function withHeadings(columns: readonly Column[]): Roles {
  const taken = new Set<ColumnRole>()
  return columns.map(({ named, texts, isAmount }) => {
    if (named === null || texts.length === 0) return null
    if ((named === 'percent' || named === 'grams') && !isAmount && !texts.some((text) => readAmountText(text, '.').ok))
      return null
    if (named === 'note' || named === 'ignore') return named
    if (taken.has(named)) return null
    taken.add(named)
    return named
  })
}

function withContent(named: Roles, columns: readonly Column[]): ColumnRole[] {
  const roles = [...named]
  const give = (role: ColumnRole, fits: (column: Column) => number): void => {
    if (roles.includes(role)) return
    const scores = columns.map((column, at) => (roles[at] === null && column.named === null ? fits(column) : 0))
    const best = Math.max(0, ...scores)
    if (best > 0) roles[scores.indexOf(best)] = role
  }
  const amount = ({ isAmount, texts }: Column) => (isAmount ? texts.length : 0)
  give('percent', (column) => (amount(column) > 0 && isWhole(column, markIn(column, columns)) ? amount(column) : 0))
  if (!roles.includes('percent')) give('grams', amount)
  give('phase', ({ inRows, texts }) => (isPhases(texts) ? inRows.length + 1 : 0))
  const texts = (column: Column) => (column.isAmount ? 0 : column.inRows.length)
  const share = (column: Column, fits: (text: string) => boolean) =>
    column.inRows.filter(fits).length > column.inRows.length / 2 ? column.inRows.filter(fits).length : 0
  give('function', (column) => share(column, looksLikeFunction))
  const isNamed = roles.includes('name')
  const free = columns.filter((column, at) => roles[at] === null && column.named === null && texts(column) > 0)
  if (free.length > 1 || isNamed) give('inci', (column) => share(column, looksLikeInci))
  // Of what is left the column with a text in most rows names the lines, the first one of equals.
  if (!isNamed && !(roles.includes('inci') && free.length === 0)) give('name', texts)
  return roles.map((role) => role ?? 'ignore')
}

/** Whether a column of figures makes a whole: with a q.s. line below 100, without one 100 or 1. */
function isWhole(column: Column, mark: '.' | ','): boolean {
  const { sum, fills, hasSign } = figuresOf(column, mark)
  if (hasSign) return true
  return fills ? sum < 100 : isNear(sum, 100) || isNear(sum, 1)
}

function scaleOf(column: Column, mark: '.' | ','): 'percent' | 'fraction' {
  const { sum, fills, hasSign } = figuresOf(column, mark)
  return !hasSign && !fills && isNear(sum, 1) ? 'fraction' : 'percent'
}

function figuresOf({ texts }: Column, mark: '.' | ',') {
  const read = texts.map((text) => readAmountText(text, mark)).flatMap((each) => (each.ok ? [each.value] : []))
  const sum = read.reduce((all, each) => all + (each.kind === 'number' ? each.value : 0), 0)
  const hasSign = read.some((each) => each.kind === 'number' && each.unit === '%')
  return { sum, hasSign, fills: read.some((each) => each.kind === 'qs') }
}

const isNear = (sum: number, whole: number): boolean => Math.abs(sum - whole) <= whole * 0.02

/** Letters, short names with "phase" in them, or merged cells with one of these in the first row. */
const isPhases = (texts: readonly string[]): boolean =>
  texts.length > 0 && texts.every((text) => readPhaseCell(text) !== null)
