import type { FieldOption, FieldSpec } from '../../app/forms/field-spec'
import type { StepKind } from '../../batch/step'
import type { Options } from './fields'

/** Every kind of step, in the order in which a batch meets them. */
export const stepKinds: readonly { readonly value: StepKind['kind']; readonly label: string }[] = [
  { value: 'weigh', label: 'Weigh a line' },
  { value: 'charge', label: 'Tip a cup in' },
  { value: 'combine', label: 'Combine two vessels' },
  { value: 'heat', label: 'Heat' },
  { value: 'cool', label: 'Cool' },
  { value: 'hold', label: 'Hold' },
  { value: 'hydrate', label: 'Hydrate' },
  { value: 'mix', label: 'Mix' },
  { value: 'deaerate', label: 'Let the air out' },
  { value: 'measure', label: 'Measure a check' },
  { value: 'adjust', label: 'Adjust pH or viscosity' },
  { value: 'make-up', label: 'Make up to weight' },
  { value: 'rest', label: 'Rest' },
  { value: 'sample', label: 'Take samples' },
  { value: 'fill', label: 'Fill' },
  { value: 'clean', label: 'Clean' },
  { value: 'note', label: 'A note to read' },
]

/** The fields of a step: those of its kind, then those that every step has. */
export function stepFields(kind: string, options: Options): readonly FieldSpec[] {
  const vesselLabel = kind === 'charge' || kind === 'combine' ? 'Into' : 'Vessel'
  return [
    { key: 'vessel', label: vesselLabel, kind: 'choice', options: options.vessels },
    ...fieldsOfKind(kind, options),
    { key: 'phase', label: 'Listed under', kind: 'choice', options: options.phases },
    { key: 'title', label: 'Title', kind: 'text', optional: true },
    { key: 'instruction', label: 'How', kind: 'text', rows: 2, longest: 2000, optional: true },
    { key: 'caution', label: 'Caution', kind: 'text', longest: 300, optional: true },
    { key: 'after', label: 'Waits also for', kind: 'many', options: options.steps, optional: true },
    { key: 'secondPerson', label: 'A second person checks', kind: 'switch', optional: true },
  ]
}

const sameWords = (...values: string[]): FieldOption[] => values.map((value) => ({ value, label: value }))

const minutes: FieldSpec = { key: 'minutes', label: 'How long', kind: 'number', unit: 'min', min: 0, max: 43_200 }
const targetC: FieldSpec = { key: 'targetC', label: 'To', kind: 'number', unit: '°C', min: -100, max: 400 }
const rinse: FieldSpec = { key: 'rinse', label: 'Rinse with what is held back', kind: 'switch', optional: true }
const startsWhen: FieldSpec = { key: 'startsWhen', label: 'The clock starts when', kind: 'text', optional: true }

function fieldsOfKind(kind: string, { lines, vessels, checks }: Options): readonly FieldSpec[] {
  const line: FieldSpec = { key: 'line', label: 'Line', kind: 'choice', options: lines }
  const check: FieldSpec = { key: 'check', label: 'Check', kind: 'choice', options: checks }
  switch (kind) {
    case 'weigh':
      return [
        line,
        {
          key: 'portion',
          label: 'Of a q.s. line: this share of the batch',
          hint: 'empty: all that is left',
          kind: 'number',
          percent: true,
          optional: true,
        },
      ]
    case 'charge':
      return [
        { key: 'cup', label: 'From', kind: 'choice', options: vessels },
        {
          key: 'rate',
          label: 'How fast',
          kind: 'choice',
          options: sameWords('sprinkle', 'stream', 'portions', 'all at once'),
        },
        rinse,
      ]
    case 'combine':
      return [
        { key: 'from', label: 'From', kind: 'choice', options: vessels },
        {
          key: 'bothAtLeastC',
          label: 'Both at least',
          kind: 'number',
          unit: '°C',
          min: -100,
          max: 400,
          optional: true,
        },
        {
          key: 'maxDifferenceC',
          label: 'Not further apart than',
          kind: 'number',
          unit: '°C',
          difference: true,
          min: 0,
          max: 100,
          optional: true,
        },
        rinse,
      ]
    case 'heat':
      return [
        targetC,
        { ...minutes, key: 'holdMinutes', label: 'Hold there', optional: true },
        { key: 'covered', label: 'Covered', kind: 'switch', optional: true },
      ]
    case 'cool':
      return [targetC, { key: 'by', label: 'By', kind: 'choice', options: sameWords('air', 'bath') }]
    case 'hold':
      return [minutes, startsWhen]
    case 'hydrate':
      return [minutes, { key: 'shear', label: 'Stirring', kind: 'text', longest: 80 }, startsWhen]
    case 'mix':
      return [
        { key: 'tool', label: 'Tool', kind: 'text', longest: 80 },
        minutes,
        { key: 'rpm.min', label: 'Speed, from', kind: 'number', unit: 'rpm', min: 0, max: 100_000, optional: true },
        { key: 'rpm.max', label: 'Speed, to', kind: 'number', unit: 'rpm', min: 0, max: 100_000, optional: true },
        { key: 'noVortex', label: 'No vortex', kind: 'switch', optional: true },
      ]
    case 'deaerate':
      return [{ key: 'by', label: 'By', kind: 'choice', options: sameWords('stand', 'vacuum') }, minutes]
    case 'measure':
      return [check]
    case 'adjust':
      return [
        { key: 'property', label: 'Property', kind: 'choice', options: sameWords('pH', 'viscosity') },
        { ...line, label: 'With' },
        check,
        { key: 'portionUg', label: 'A portion is at most', kind: 'mass', zero: false, optional: true },
        { ...minutes, key: 'waitMinutes', label: 'Wait before reading', optional: true },
      ]
    case 'make-up':
      return [{ ...line, label: 'With' }]
    case 'rest':
      return [{ key: 'hours', label: 'How long', kind: 'number', unit: 'h', min: 0, max: 8760 }]
    case 'sample':
      return [
        { key: 'jars', label: 'Jars', kind: 'number', whole: true, min: 1, max: 1000 },
        { key: 'eachUg', label: 'Each', kind: 'mass' },
      ]
    case 'fill':
      return [
        { key: 'units', label: 'Units', kind: 'number', whole: true, min: 1, max: 100_000, optional: true },
        { key: 'eachUg', label: 'Each', kind: 'mass', optional: true },
      ]
    case 'note':
      return [{ key: 'text', label: 'Note', kind: 'text', rows: 2, longest: 2000 }]
    default:
      return []
  }
}
