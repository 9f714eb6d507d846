import type { FieldOption, FieldSpec } from '../../app/forms/field-spec'

/** What the choices of a form are made of: the other parts of the same formula. */
export interface Options {
  readonly materials: readonly FieldOption[]
  readonly phases: readonly FieldOption[]
  readonly lines: readonly FieldOption[]
  readonly steps: readonly FieldOption[]
  readonly vessels: readonly FieldOption[]
  readonly checks: readonly FieldOption[]
}

export const noOptions: Options = { materials: [], phases: [], lines: [], steps: [], vessels: [], checks: [] }

export const same = (...values: string[]): FieldOption[] => values.map((value) => ({ value, label: value }))

export const headFields: readonly FieldSpec[] = [
  { key: 'name', label: 'Name', kind: 'text' },
  { key: 'code', label: 'Code', kind: 'text', longest: 40 },
  {
    key: 'nickname',
    label: 'What its batches are called',
    hint: 'one word: "Lotion" gives "Lotion 041"',
    kind: 'text',
    longest: 40,
  },
  { key: 'contact', label: 'Contact', kind: 'choice', options: same('leave-on', 'rinse-off') },
  { key: 'usualSizeUg', label: 'Usual batch', kind: 'mass', zero: false },
  { key: 'approvedBy', label: 'Approved by', kind: 'text', longest: 80, optional: true },
  {
    key: 'restHours',
    label: 'Rest before the final checks',
    kind: 'number',
    unit: 'h',
    min: 0,
    max: 8760,
    optional: true,
  },
  {
    key: 'readingAgeMinutes',
    label: 'A temperature reading counts for',
    hint: '15 min if empty',
    kind: 'number',
    unit: 'min',
    min: 1,
    max: 1440,
    optional: true,
  },
  {
    key: 'lossAllowance',
    label: 'Unexplained loss allowed',
    kind: 'number',
    percent: true,
    optional: true,
  },
  { key: 'note', label: 'What changed, and why', kind: 'text', rows: 2, longest: 2000, optional: true },
  { key: 'preflight', label: 'To do before the start, one a line', kind: 'list', most: 60 },
]

export const phaseFields: readonly FieldSpec[] = [
  { key: 'letter', label: 'Letter', kind: 'text', longest: 4 },
  { key: 'name', label: 'Name', kind: 'text', longest: 80 },
]

export const vesselFields: readonly FieldSpec[] = [
  { key: 'name', label: 'Name', kind: 'text', longest: 80 },
  {
    key: 'kind',
    label: 'What it is',
    kind: 'choice',
    options: [
      { value: 'vessel', label: 'vessel: what is in stays in' },
      { value: 'cup', label: 'cup: can be emptied again' },
    ],
  },
  { key: 'holds', label: 'What it is for', kind: 'text', longest: 300, optional: true },
  { key: 'roomFactor', label: 'Room, times its contents', kind: 'number', min: 1, max: 100, optional: true },
  { key: 'openLifeMinutes', label: 'May stand open', kind: 'number', unit: 'min', min: 0, max: 43_200, optional: true },
]

const everyCheck: readonly FieldSpec[] = [
  { key: 'label', label: 'What is checked', kind: 'text' },
  {
    key: 'property',
    label: 'Property',
    kind: 'choice',
    options: [
      ...same('pH', 'viscosity', 'density', 'temperature', 'appearance', 'colour', 'odour'),
      { value: 'foam', label: 'foam height' },
      ...same('centrifuge'),
      { value: 'feel', label: 'skin feel, on a scale' },
      ...same('other'),
    ],
  },
  {
    key: 'when',
    label: 'When',
    kind: 'choice',
    options: [
      { value: 'in-process', label: 'in process' },
      { value: 'after-rest', label: 'after the rest' },
    ],
  },
  { key: 'limits.min', label: 'At least', kind: 'number', optional: true },
  { key: 'limits.max', label: 'At most', kind: 'number', optional: true },
  { key: 'unit', label: 'Unit', kind: 'text', longest: 40, optional: true },
  {
    key: 'basis.kind',
    label: 'Sample',
    kind: 'choice',
    options: [
      { value: 'neat', label: 'neat' },
      { value: 'dilution', label: 'diluted in water' },
    ],
    optional: true,
  },
  {
    key: 'basis.fraction',
    label: 'Dilution, w/w',
    hint: 'only where diluted',
    kind: 'number',
    percent: true,
    optional: true,
  },
  { key: 'method', label: 'Method', kind: 'text', longest: 500, rows: 2, optional: true },
  { key: 'expected', label: 'What it should be, in words', kind: 'text', longest: 500, optional: true },
]

const scaleFields: readonly FieldSpec[] = [
  { key: 'scale.least', label: 'Scale from', kind: 'number', min: 1, max: 1000, hint: 'else 1 to 9', optional: true },
  { key: 'scale.most', label: 'Scale to', kind: 'number', min: 1, max: 1000, optional: true },
  { key: 'scale.low', label: 'Its low end means', kind: 'text', longest: 80, optional: true },
  { key: 'scale.high', label: 'Its high end means', kind: 'text', longest: 80, optional: true },
]

/** The fields of a check; what is judged in steps may name its own. */
export const checkFields = (property: string): readonly FieldSpec[] =>
  property === 'feel' ? [...everyCheck, ...scaleFields] : everyCheck

/** The fields of a limit over several lines, by what it is a limit of. */
export function limitFields(kind: string): readonly FieldSpec[] {
  return [
    { key: 'name', label: 'Name', hint: '"preservatives in all"', kind: 'text' },
    {
      key: 'of.kind',
      label: 'Limit of',
      kind: 'choice',
      options: [
        { value: 'inci', label: 'one INCI constituent' },
        { value: 'active', label: 'active matter of a class' },
        { value: 'function', label: 'all materials that do the same' },
      ],
    },
    ...limitedFields(kind),
    { key: 'min', label: 'At least', kind: 'number', percent: true, optional: true },
    { key: 'max', label: 'At most', kind: 'number', percent: true, optional: true },
  ]
}

function limitedFields(kind: string): readonly FieldSpec[] {
  switch (kind) {
    case 'inci':
      return [{ key: 'of.name', label: 'INCI name', kind: 'text' }]
    case 'active':
      return [{ key: 'of.class', label: 'Class', kind: 'choice', options: activeClasses }]
    case 'function':
      return [{ key: 'of.function', label: 'What they do', hint: 'as it stands at the materials', kind: 'text' }]
    default:
      return []
  }
}

const activeClasses = same('anionic', 'amphoteric', 'non-ionic', 'cationic surfactant', 'cationic polymer')
