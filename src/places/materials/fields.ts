import type { FieldOption, FieldSpec, Values } from '../../app/forms/field-spec'
import { readDecimal } from '../../trade/number-text'

const same = (...values: string[]): FieldOption[] => values.map((value) => ({ value, label: value }))

export const materialFields: readonly FieldSpec[] = [
  { key: 'name', label: 'Bench name', hint: 'short, as one says it', kind: 'text' },
  { key: 'function', label: 'What it does', hint: 'humectant, emulsifier, solvent', kind: 'text' },
  {
    key: 'inci',
    label: 'INCI names, one a line, each with its percentage',
    hint: 'a single name needs none; a blend: "Cetearyl Alcohol 75"',
    kind: 'parts',
  },
  {
    key: 'form',
    label: 'Form',
    kind: 'choice',
    options: same('liquid', 'powder', 'solid', 'paste', 'solution'),
    optional: true,
  },
  { key: 'densityGPerMl', label: 'Density', kind: 'number', unit: 'g/mL', min: 0.01, max: 25, optional: true },
  { key: 'maxTemperatureC', label: 'Not above', kind: 'number', unit: '°C', min: -100, max: 400, optional: true },
  { key: 'costPerKg', label: 'Cost of a kilogram', kind: 'number', min: 0, max: 1e7, optional: true },
  { key: 'reorderAtUg', label: 'Order more at', hint: 'so much that may be used', kind: 'mass', optional: true },
  { key: 'useLevel.min', label: 'Use level, at least', kind: 'number', percent: true, optional: true },
  { key: 'useLevel.max', label: 'Use level, at most', kind: 'number', percent: true, optional: true },
  { key: 'phWindow.min', label: 'pH, at least', kind: 'number', min: 0, max: 14, optional: true },
  { key: 'phWindow.max', label: 'pH, at most', kind: 'number', min: 0, max: 14, optional: true },
  { key: 'activeMatter.fraction', label: 'Active matter', kind: 'number', percent: true, optional: true },
  {
    key: 'activeMatter.class',
    label: 'Class of the active matter',
    kind: 'choice',
    options: same('anionic', 'amphoteric', 'non-ionic', 'cationic surfactant', 'cationic polymer'),
    optional: true,
  },
  { key: 'hlb', label: 'HLB, of an emulsifier', kind: 'number', min: 0, max: 40, optional: true },
  {
    key: 'requiredHlb',
    label: 'HLB that an oil wants',
    hint: 'oil in water',
    kind: 'number',
    min: 0,
    max: 40,
    optional: true,
  },
  { key: 'volatile', label: 'Evaporates when warm', kind: 'switch', optional: true },
  {
    key: 'hazards.kind',
    label: 'Hazard',
    kind: 'choice',
    options: same('dust', 'caustic', 'acid', 'hot', 'flammable', 'sensitiser', 'slippery', 'other'),
    optional: true,
  },
  {
    key: 'hazards.caution',
    label: 'Caution, one line, shown where it is weighed',
    hint: '"Dust: mask on, extraction running"',
    kind: 'text',
    longest: 300,
    optional: true,
  },
  {
    key: 'hazards.statements',
    label: 'Statements of its safety data sheet, one a line',
    kind: 'list',
    most: 40,
    optional: true,
  },
  { key: 'hazards.wear', label: 'What to wear, one a line', kind: 'list', longest: 80, most: 20, optional: true },
  { key: 'allergens', label: 'Fragrance allergens, one a line', kind: 'list', longest: 200, most: 100, optional: true },
  {
    key: 'allergenParts',
    label: 'Allergens with their percentage, one a line',
    hint: 'where the supplier says so: "Linalool 2.5"',
    kind: 'parts',
    shareNeeded: true,
    optional: true,
  },
]

/** What must hold between two fields of a material. */
export function checkMaterial(values: Values): Record<string, string> {
  const filled = (key: string) => (values[key] ?? '').trim() !== ''
  const errors: Record<string, string> = {}
  if (filled('hazards.caution') && !filled('hazards.kind'))
    errors['hazards.kind'] = 'Say which hazard the caution is about.'
  const hazard = filled('hazards.kind') || filled('hazards.statements') || filled('hazards.wear')
  if (hazard && !filled('hazards.caution')) errors['hazards.caution'] = 'A hazard needs one line of caution.'
  if (filled('activeMatter.fraction') !== filled('activeMatter.class'))
    errors[filled('activeMatter.class') ? 'activeMatter.fraction' : 'activeMatter.class'] =
      'Active matter needs its share and its class.'
  for (const [min, max] of ends)
    if (numberIn(values[min]) > numberIn(values[max]))
      errors[max] = 'This end is below the other one. Change one of the two.'
  for (const key of ['inci', 'allergenParts']) {
    const percent = sumOfParts(values[key])
    if (percent > 100.0005)
      errors[key] = `The percentages come to ${Number(percent.toFixed(3))} %. Together they are 100 % at most.`
  }
  return errors
}

const ends = [
  ['useLevel.min', 'useLevel.max'],
  ['phWindow.min', 'phWindow.max'],
] as const

function numberIn(text = ''): number {
  const read = readDecimal(text.replace('%', ''))
  return read.ok ? read.value : Number.NaN
}

/** The shares of names, one a line, in percent; what cannot be read counts nothing. */
function sumOfParts(text = ''): number {
  const shares = text.split('\n').map((line) => numberIn(/([\d.,]+)\s*%?\s*$/.exec(line)?.[1]))
  return shares.reduce((sum, share) => sum + (Number.isNaN(share) ? 0 : share), 0)
}

export const lotFields: readonly FieldSpec[] = [
  { key: 'code', label: 'Lot code', kind: 'text', longest: 80 },
  { key: 'supplier', label: 'Supplier', kind: 'text', optional: true },
  { key: 'receivedUg', label: 'Received', hint: 'with a unit, if not grams: 2 kg', kind: 'mass' },
  { key: 'receivedOn', label: 'Received on', kind: 'date', optional: true },
  { key: 'expires', label: 'Last day of use', kind: 'date', optional: true },
  { key: 'retestOn', label: 'Good until tested again', hint: 'the last day before that', kind: 'date', optional: true },
  {
    key: 'assay',
    label: 'Assay, from its certificate',
    hint: 'active matter of this lot',
    kind: 'number',
    percent: true,
    optional: true,
  },
  {
    key: 'status',
    label: 'Status',
    kind: 'choice',
    options: [
      { value: 'released', label: 'released: may be used' },
      { value: 'quarantine', label: 'in quarantine: not yet' },
      { value: 'used-up', label: 'used up' },
    ],
  },
]

export const adjustFields: readonly FieldSpec[] = [
  { key: 'countedUg', label: 'On hand by the balance', hint: 'what is there now, without its container', kind: 'mass' },
  { key: 'reason', label: 'Why it differs', kind: 'text' },
]
