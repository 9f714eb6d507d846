/**
 * The tables in a piece of HTML, each as rows of texts, as spreadsheets and documents put them on the clipboard. A merged
 * cell says its text once, at its upper left. Nothing of it is ever made into elements: it is read as text.
 */
export function readHtmlTables(html: string): string[][][] {
  const tables: Building[] = []
  const open: Building[] = []
  for (const token of tokensOf(html)) {
    const table = open.at(-1)
    if (token.kind === 'text') table?.cell?.parts.push(token.text)
    else if (token.name === 'table') startOrEnd(token.ends, open, tables)
    else if (table) takeTag(table, token)
  }
  return tables.map(({ rows }) => rows.map((row) => Array.from(row, (cell) => cell ?? '')))
}

export const hasHtmlTable = (html: string): boolean => /<table[\s>]/i.test(html)

interface Tag {
  readonly kind: 'tag'
  readonly name: string
  readonly ends: boolean
  readonly attributes: string
}

type Token = Tag | { readonly kind: 'text'; readonly text: string }

interface Building {
  readonly rows: string[][]
  /** How many more rows each column is covered by a cell from above. */
  readonly covered: number[]
  row: string[] | null
  cell: { readonly parts: string[]; readonly across: number; readonly down: number } | null
}

/** Elements whose text is not for reading. */
const hidden = /<(script|style|head|title|template)\b[^>]*>[\s\S]*?<\/\1\s*>|<!--[\s\S]*?-->|<![^>]*>/gi

function* tokensOf(html: string): Generator<Token> {
  const shown = html.replace(hidden, '')
  for (const [found, slash, name, attributes] of shown.matchAll(/<(\/?)([a-z][\w:-]*)([^>]*)>|[^<]+|</gi)) {
    if (name === undefined) yield { kind: 'text', text: decode(found) }
    else yield { kind: 'tag', name: name.toLowerCase(), ends: slash === '/', attributes: attributes ?? '' }
  }
}

function startOrEnd(ends: boolean, open: Building[], tables: Building[]): void {
  if (ends) {
    const table = open.pop()
    if (table) endRow(table)
    return
  }
  const table: Building = { rows: [], covered: [], row: null, cell: null }
  tables.push(table)
  open.push(table)
}

function takeTag(table: Building, { name, ends, attributes }: Tag): void {
  switch (name) {
    case 'tr':
      endRow(table)
      if (!ends) table.row = []
      return
    case 'td':
    case 'th':
      endCell(table)
      if (ends) return
      table.row ??= []
      table.cell = { parts: [], across: spanOf(attributes, 'colspan'), down: spanOf(attributes, 'rowspan') }
      return
    case 'br':
    case 'p':
    case 'div':
    case 'li':
      if (table.cell && table.cell.parts.length > 0) table.cell.parts.push('\n')
  }
}

function endCell(table: Building): void {
  const { cell, row, covered } = table
  if (cell === null || row === null) return
  table.cell = null
  while ((covered[row.length] ?? 0) > 0) row.push('')
  const text = cell.parts
    .join('')
    .replace(/[ \t\r\f]*\n[ \t\r\f\n]*/g, '\n')
    .replace(/[ \t]+/g, ' ')
    .trim()
  for (let each = 0; each < cell.across; each += 1) {
    // Counted down at the end of this row too.
    covered[row.length] = cell.down
    row.push(each === 0 ? text : '')
  }
}

function endRow(table: Building): void {
  endCell(table)
  if (table.row === null) return
  const { covered, row } = table
  while ((covered[row.length] ?? 0) > 0) row.push('')
  table.rows.push(row)
  table.row = null
  for (const [column, rows] of covered.entries()) covered[column] = Math.max(0, (rows ?? 0) - 1)
}

/** A span is held to what a table of ours can have. */
const spanOf = (attributes: string, name: string): number => {
  const [, digits = '1'] = new RegExp(`\\b${name}\\s*=\\s*["']?(\\d+)`, 'i').exec(attributes) ?? []
  return Math.min(Math.max(1, Number(digits)), 2000)
}

const named: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  ndash: '–',
  mdash: '—',
  deg: '°',
  micro: 'µ',
  shy: '',
  reg: '®',
  times: '×',
  auml: 'ä',
  ouml: 'ö',
  uuml: 'ü',
  eacute: 'é',
  egrave: 'è',
  agrave: 'à',
}

/** Line ends in the source are blanks; what is a line end is said by an element. */
const decode = (text: string): string =>
  text.replace(/\s+/g, ' ').replace(/&(#x?[\da-f]+|\w+);?/gi, (whole, code: string) => {
    if (!code.startsWith('#')) return named[code.toLowerCase()] ?? whole
    const point = /^#x/i.test(code) ? Number.parseInt(code.slice(2), 16) : Number(code.slice(1))
    return point > 0 && point <= 0x10ffff ? String.fromCodePoint(point) : whole
  })
