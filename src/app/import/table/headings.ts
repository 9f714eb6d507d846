import type { ColumnRole } from './mapping'

/** The headings of a formula's lines as this app writes them to a file. */
export const ownHeadings = ['Phase', 'Phase name', 'Material', 'INCI', '% w/w', 'Function'] as const

export const ownRoles: readonly ColumnRole[] = ['phase', 'phase-name', 'name', 'inci', 'percent', 'function']

export const isOwnHeading = (row: readonly string[]): boolean =>
  row.length >= ownHeadings.length && row.every((text, at) => text === (ownHeadings[at] ?? ''))

/** The role that a heading names; null for what is no heading of ours. */
export function headingRole(text: string): ColumnRole | null {
  const plain = text.toLowerCase().replace(/[*_]/g, ' ').replace(/\s+/g, ' ').trim()
  if (plain === '' || plain.length > 60) return null
  const found = words.find(([, pattern]) => pattern.test(plain))
  return found?.[0] ?? null
}

/** Whether a heading says only that there is an amount, not of what kind: its content tells. */
export const isOpenHeading = (text: string): boolean =>
  /^(?:quantity|qty|amount|menge|quantit[ée]|batch)\b/i.test(text.trim()) && !/[([/ ](?:mg|kg|g|oz|lb)\b|%/i.test(text)

/** The unit of a column of masses, from its heading: "Weight (kg)"; grams where it names none. */
export function headingUnit(text: string): string {
  const [, unit = 'g'] = /[([/ ]\s*(mg|kg|oz|lb|g)\b/i.exec(` ${text}`) ?? []
  return unit.toLowerCase()
}

/** The mass that a heading says its column is for, in its own words: "g for 500 g", "500 g batch". */
export function headingTotal(text: string): string | null {
  const [, mass] = /(\d[\d.,]*\s*(?:mg|kg|g|oz|lb))\b/i.exec(text) ?? []
  return mass ?? null
}

/** In this order: what names a percentage or INCI is that, whatever else it says. */
const words: readonly (readonly [ColumnRole, RegExp])[] = [
  ['inci', /^(?:inci|international nomenclature)\b|\binci(?:[ -]name)?s?\)?$/],
  ['phase-name', /^phase (?:name|description)$/],
  ['phase', /^(?:phase|part|stage|ph\.?)(?: ?(?:no\.?|letter|#))?$/],
  [
    'percent',
    /^%|%\)?$|\bw ?\/ ?w\b|\bwt\b.?%|^(?:per ?cent(?:age)?|pct|share|fraction|proportion|anteil|prozent|concentration)\b/,
  ],
  [
    'grams',
    /^(?:g|mg|kg|oz|lb)\b|^grams?\b|\((?:g|mg|kg|oz|lb)\)|^(?:mass|weight|weigh(?:t|ed)?|wt|qty|quantity|amount|menge|masse|gewicht|quantit[ée]|batch)\b|^\d[\d.,]* ?(?:g|kg)\b/,
  ],
  ['function', /^(?:function|purpose|role|property|what it does|funktion|fonction|use)s?\b/],
  ['supplier', /^(?:supplier|vendor|source|manufacturer|lieferant|hersteller|fournisseur)s?\b/],
  ['note', /^(?:notes?|comments?|remarks?|bemerkung(?:en)?|instructions?)\b/],
  ['ignore', /^(?:cas|ec|einecs|no|nr|lot|cost|price|preis|line)\b|^#/],
  [
    'name',
    /^(?:(?:raw )?materials?|(?:trade|bench|common|product|chemical|ingredient|material) names?|name|ingredients?|components?|items?|description|rohstoffe?|bezeichnung|mati[èe]res? premi[èe]res?|ingr[ée]dients?)\b/,
  ],
]
