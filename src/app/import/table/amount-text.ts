import { readDecimal, splitUnit } from '../../../trade/number-text'
import { accept, type Result, refuse } from '../../../trade/result'

/** What a cell says about how much goes in. Numbers are as written, in `unit` ('' where none stands behind them). */
export type AmountText =
  | { readonly kind: 'number'; readonly value: number; readonly unit: string }
  | { readonly kind: 'qs'; readonly heldBack?: number }
  | { readonly kind: 'as-needed'; readonly expected: number; readonly min: number; readonly max: number }

export type AmountRefusal =
  | { readonly code: 'AMOUNT_MISSING' }
  | {
      readonly code: 'AMOUNT_FORMULA' | 'AMOUNT_DATE' | 'AMOUNT_RANGE' | 'AMOUNT_OPEN' | 'AMOUNT_UNCLEAR'
      readonly text: string
    }
  | { readonly code: 'AMOUNT_NEGATIVE'; readonly text: string }

/** Reads one cell. `mark` decides only what could be either: 1,250 with three digits behind the mark. */
export function readAmountText(text: string, mark: '.' | ','): Result<AmountText, AmountRefusal> {
  const plain = text.trim()
  if (plain === '' || /^[-–—.]+$/.test(plain)) return refuse({ code: 'AMOUNT_MISSING' })
  if (plain.startsWith('=')) return refuse({ code: 'AMOUNT_FORMULA', text: plain })
  if (isDate(plain)) return refuse({ code: 'AMOUNT_DATE', text: plain })
  const needed = asNeeded(plain, mark)
  if (needed !== null) return accept(needed)
  if (makesUp.test(plain)) return makeUpOf(plain, mark)
  if (isOpen(plain)) return refuse({ code: 'AMOUNT_OPEN', text: plain })
  return readNumber(plain, mark)
}

/** The decimal mark that a table's figures show; null where none of them tells. */
export function markOf(texts: readonly string[]): '.' | ',' | null {
  const votes = { '.': 0, ',': 0 }
  for (const number of texts.flatMap((text) => text.match(/\d[\d.,]*/g) ?? [])) {
    const found = tellingMark(number)
    if (found !== null) votes[found] += 1
  }
  if (votes['.'] === votes[',']) return null
  return votes['.'] > votes[','] ? '.' : ','
}

/** A number with blanks or the other mark between its thousands, as plain digits with a point. */
export function plainNumber(text: string, mark: '.' | ','): string {
  const joined = text.trim().replace(/(?<=\d)[ '’](?=\d{3}(?!\d))/g, '')
  const sure = tellingMark(joined) ?? mark
  const other = sure === '.' ? ',' : '.'
  const grouped = new RegExp(`^[+−-]?\\d{1,3}(?:\\${other}\\d{3})+(?:\\${sure}\\d*)?$`)
  return (grouped.test(joined) ? joined.replaceAll(other, '') : joined).replace(',', '.')
}

/** q.s., qs 100, q.s.p., to 100, ad 100, up to 100 %, make up, the rest; or a figure that says so: 72.3 (q.s.). */
const makesUp =
  /^(?:(?:[\d.,]+\s*%?\s*\(?\s*)?q\.?\s?s\.?\s?p?\.?(?![a-z])|(?:up\s+)?to\s*100|(?:ad+|auf|add\s+to)\s*100|(?:make|made)\s+up|(?:balance|rest|remainder|ad)$)/i

/** Not in the amount but in when to stop: no share can be planned from it. */
const isOpen = (text: string): boolean =>
  /^(?:to\s+(?:adjust|ph)|as\s+(?:needed|required)|a\.?n\.?$|adjust|if\s+needed|trace|to\s+taste)/i.test(text)

function makeUpOf(text: string, mark: '.' | ','): Result<AmountText, AmountRefusal> {
  if (/\b(?:ph|viscosity|needed|required|adjust)\b/i.test(text)) return refuse({ code: 'AMOUNT_OPEN', text })
  const [, held] = /([\d.,]+)\s*%?\s*held back/i.exec(text) ?? []
  if (held === undefined) return accept({ kind: 'qs' })
  const read = readDecimal(plainNumber(held, mark), { negative: false, max: 100 })
  return read.ok ? accept({ kind: 'qs', heldBack: read.value }) : refuse({ code: 'AMOUNT_UNCLEAR', text })
}

/** "0.5 (0–1.5)": what is expected, and between what it may lie. */
function asNeeded(text: string, mark: '.' | ','): AmountText | null {
  const [, expected, min, max] =
    /^([\d.,]+)\s*%?\s*\(\s*([\d.,]+)\s*%?\s*(?:-|–|—|to|…)\s*([\d.,]+)\s*%?\s*\)(?:\s*as needed)?$/i.exec(text) ?? []
  if (expected === undefined || min === undefined || max === undefined) return null
  const read = [expected, min, max].map((each) => readDecimal(plainNumber(each, mark)))
  const [e, low, high] = read.map((each) => (each.ok ? each.value : null))
  return e == null || low == null || high == null ? null : { kind: 'as-needed', expected: e, min: low, max: high }
}

function readNumber(text: string, mark: '.' | ','): Result<AmountText, AmountRefusal> {
  const { number, unit } = splitUnit(text)
  if (/^[\d.,]+\s*(?:-|–|—)\s*[\d.,]+$/.test(number)) return refuse({ code: 'AMOUNT_RANGE', text })
  const read = readDecimal(plainNumber(number, mark))
  if (!read.ok || number === '') return refuse({ code: 'AMOUNT_UNCLEAR', text })
  if (read.value < 0) return refuse({ code: 'AMOUNT_NEGATIVE', text })
  return accept({ kind: 'number', value: read.value, unit: unit.replace(/\.$/, '').toLowerCase() })
}

/** The mark that must be the decimal one of this number: the last of two kinds, or one not before three digits. */
function tellingMark(number: string): '.' | ',' | null {
  const marks = [...number.matchAll(/[.,]/g)].map(([each]) => (each === '.' ? '.' : ','))
  const last = marks.at(-1)
  if (last === undefined) return null
  if (marks.some((each) => each !== last)) return last
  if (marks.length > 1) return last === '.' ? ',' : '.'
  return /^[+−-]?(?:0|[1-9]\d{0,2})[.,]\d{3}$/.test(number.trim()) && !/^[+−-]?0[.,]/.test(number.trim()) ? null : last
}

const isDate = (text: string): boolean =>
  /^\d{4}-\d{2}-\d{2}(?:[T ].*)?$/.test(text) ||
  /^\d{1,2}[./-]\d{1,2}[./-]\d{2,4}$/.test(text) ||
  /^\d{1,2}[ .-]*(?:jan|feb|m[aä]r|apr|ma[iy]|jun|jul|aug|sep|o[ck]t|nov|de[cz])[a-z]*\.?(?:[ .-]*\d{2,4})?$/i.test(
    text,
  ) ||
  /^(?:jan|feb|m[aä]r|apr|ma[iy]|jun|jul|aug|sep|o[ck]t|nov|de[cz])[a-z]*\.?[ -]+\d{1,4}$/i.test(text)
