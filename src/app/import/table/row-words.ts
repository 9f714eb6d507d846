/** A phase as a cell says it. Without a letter of its own it gets the next free one. */
export interface PhaseWords {
  readonly letter: string | null
  readonly name: string
}

/** A cell of a phase column: "A", "A1", "2", "Phase B", "C – cool-down", "Oil phase"; null where it is no phase. */
export function readPhaseCell(text: string): PhaseWords | null {
  return readPhaseHeading(text) ?? bare(text)
}

/** A row that says a phase and nothing else: "Phase A", "PART B: oils", "A – water", "Oil phase". */
export function readPhaseHeading(text: string): PhaseWords | null {
  const plain = text.trim().replace(/\s+/g, ' ').replace(/:$/, '')
  if (plain === '' || plain.length > 80) return null
  const [, letter = '', rest = ''] =
    /^(?:phase|part|stage|teil)\s*:?\s*([A-Z]\d?|[IVX]{1,4}|\d{1,2})\b\s*(.*)$/i.exec(plain) ?? []
  if (letter !== '') return { letter: letter.toUpperCase(), name: nameIn(rest) }
  const [, before = '', after = ''] = /^([A-Z]\d?)\s*(?:[–—:.)]|-(?=\s)|\/)\s*(\S.*)$/.exec(plain) ?? []
  if (before !== '' && after.length <= 40) return { letter: before, name: nameIn(after) }
  return /^[\p{L} /+&-]{2,40}\bphase$/iu.test(plain) || /^cool[ -]?down$/i.test(plain)
    ? { letter: null, name: plain }
    : null
}

/** "Total", "Sum", "Subtotal A", "Gesamt": a row that adds up and is no line. */
export const isTotalText = (text: string): boolean =>
  /^(?:grand\s+|sub\s*-?\s*)?(?:total|totals|sum|summe|gesamt|somme|totale|zwischensumme)\b(?!.*\b(?:extract|protein)\b)/i.test(
    text.trim(),
  )

function bare(text: string): PhaseWords | null {
  const plain = text.trim()
  const isBare = /^(?:[A-Z]\d{0,2}|[a-h]|[IVX]{1,4}|[1-9])[.):]?$/.test(plain)
  return isBare ? { letter: plain.replace(/[.):]$/, '').toUpperCase(), name: '' } : null
}

const nameIn = (text: string): string =>
  text
    .replace(/^[\s–—:.)/-]+/, '')
    .replace(/^\((.*)\)$/, '$1')
    .trim()
