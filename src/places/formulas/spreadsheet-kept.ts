import type { Values } from '../../app/forms/field-spec'
import { showNumber } from '../../app/forms/show-fields'
import { guessMapping } from '../../app/import/table/columns'
import type { Mapping } from '../../app/import/table/mapping'
import { readTable } from '../../app/import/table/read-table'
import { nothingSettled, type Settled } from '../../app/import/table/settled'
import type { Sheet } from '../../app/import/table/sheet'
import type { ReadTable } from '../../app/import/table/understood'
import { gramsFromMicrograms } from '../../trade/mass-ratio'

/** A spreadsheet while it is being understood, whole: kept at every change, so that a reload loses nothing. */
export interface KeptImport {
  readonly sheets: readonly Sheet[]
  readonly chosen: number
  readonly mapping: Mapping
  readonly settled: Settled
  /** What each new name was said to be: the id of a material, or `new`. By plain name. */
  readonly materials: Readonly<Record<string, string>>
  readonly head: Values
  /** Ids that were given out, so that saving again after a refusal goes on with the same ones. */
  readonly ids: Readonly<Record<string, string>>
}

export const newMaterial = 'new'

/** The sheet that reads best as a formula stands first; its columns are guessed. */
export function beginWith(sheets: readonly Sheet[], mark: '.' | ','): KeptImport {
  const scored = sheets.map((sheet) => scoreOf(readTable(sheet, guessMapping(sheet), nothingSettled)))
  const chosen = scored.indexOf(Math.max(...scored))
  return ofSheet({ sheets, chosen, materials: {}, ids: {} }, mark)
}

/** Another sheet of the same file: read anew. */
export const withSheet = (kept: KeptImport, chosen: number, mark: '.' | ','): KeptImport =>
  ofSheet({ ...kept, chosen }, mark)

/** What changes with every key; the cells are kept apart, once. */
export const stateText = ({ sheets: _apart, ...rest }: KeptImport): string => JSON.stringify(rest)

/** Written by the model alone; texts of an older shape are passed over. */
export function keptFrom(cells: string | null, state: string | null): KeptImport | null {
  if (cells === null || state === null) return null
  try {
    const kept: Partial<KeptImport> = { ...JSON.parse(state), sheets: JSON.parse(cells) }
    const isWhole = kept.sheets && kept.mapping && kept.settled && kept.materials && kept.head && kept.ids
    return isWhole ? (kept as KeptImport) : null
  } catch {
    return null
  }
}

const scoreOf = ({ rows, problems }: ReadTable): number =>
  problems.some(({ code }) => code.startsWith('TABLE_NO_')) ? 0 : rows.filter(({ line }) => line !== null).length

function ofSheet(kept: Omit<KeptImport, 'mapping' | 'settled' | 'head'>, mark: '.' | ','): KeptImport {
  const sheet = kept.sheets[kept.chosen] ?? { name: '', rows: [] }
  const mapping = guessMapping(sheet)
  const { title, totalUg } = readTable(sheet, mapping, nothingSettled)
  const code = codeIn(title) ?? codeIn(sheet.name) ?? ''
  const name = title
    .replace(/^(?:formula|product|name)\s*:\s*/i, '')
    .replace(code, '')
    .replace(/\br\d+\b/, '')
    .trim()
  const size = totalUg !== null && totalUg > 0 ? gramsFromMicrograms(totalUg) : 500
  const head = {
    name: name.slice(0, 200),
    code,
    nickname: nicknameOf(name),
    contact: 'leave-on',
    usualSizeUg: showNumber(size, mark),
  }
  return { ...kept, mapping, settled: nothingSettled, head }
}

/** Capitals and digits with dashes, as codes of formulas are written: QW-LOT-01. */
const codeIn = (text: string): string | null => /\b[A-Z]{2,}(?:-[A-Z0-9]+)+\b/.exec(text)?.[0] ?? null

/** The last word says what a product is: "Oat barrier body lotion" gives "Lotion". */
function nicknameOf(name: string): string {
  const last =
    name
      .split(/\s+/)
      .filter((word) => /^\p{L}{3,}$/u.test(word))
      .at(-1) ?? ''
  return last.charAt(0).toUpperCase() + last.slice(1)
}
