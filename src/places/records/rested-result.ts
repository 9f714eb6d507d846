import type { CheckRefusal } from '../../app/refusals/forms-records'
import { densityOf, foamMinutes, type HowRead, needsUnit, scaleOf, unitOf } from '../../batch/how-read'
import type { Bodies } from '../../batch/kinds'
import { type NumberOptions, type NumberRefusal, readDecimal, readMass } from '../../trade/number-text'
import { type RestedRow, type RowTexts, readingFields } from './rested-row'

type Result = Bodies['measured']

export interface RowProblem {
  readonly row: string
  readonly field: string
  readonly refusal: CheckRefusal | NumberRefusal
}

/** The result that a row's texts make, what is wrong with them, or null where nothing was entered. */
export function readRow(row: RestedRow, text: RowTexts): Result | RowProblem | null {
  if (isEmpty(row, text)) return null
  const { check, step } = row
  const reader = readerOf(text)
  const label = check?.label ?? reader.words('label', 'CHECK_WITHOUT_NAME')
  const made = resultOf(row, reader)
  const wrong = reader.firstWrong()
  if (wrong) return { row: row.key, ...wrong }
  return {
    property: check?.property ?? 'other',
    label,
    ...(check === undefined ? {} : { check: check.id }),
    ...(step === undefined ? {} : { step }),
    ...(check?.basis === undefined ? {} : { basis: check.basis }),
    ...made,
  }
}

type Wrong = Pick<RowProblem, 'field' | 'refusal'>

/** Reads field after field and keeps what was wrong first; what it gives for a wrong one is thrown away. */
interface Reader {
  readonly text: RowTexts
  readonly number: (field: string, options?: NumberOptions) => number
  readonly mass: (field: string) => number
  readonly words: (field: string, missing: CheckRefusal['code']) => string
  readonly note: (field: string, refusal: Wrong['refusal']) => void
  readonly firstWrong: () => Wrong | undefined
}

function readerOf(text: RowTexts): Reader {
  const wrong: Wrong[] = []
  const note: Reader['note'] = (field, refusal) => void wrong.push({ field, refusal })
  const worth = (field: string, read: ReturnType<typeof readDecimal>): number => {
    if (!read.ok) note(field, read.refusal)
    return read.ok ? read.value : 0
  }
  return {
    text,
    note,
    number: (field, options = { negative: false }) => worth(field, readDecimal(text(field), options)),
    mass: (field) => worth(field, readMass(text(field), { negative: false, zero: false })),
    words: (field, code) => {
      const value = text(field).trim()
      if (value === '') note(field, { code })
      if (value.length > longestLabel) note(field, { code: 'CHECK_NAME_LONG' })
      return value
    },
    firstWrong: () => wrong[0],
  }
}

/** What of a row is a result by itself or belongs to one reading alone; how a thing is usually read is neither. */
const results: Readonly<Record<RestedRow['kind'], readonly string[]>> = {
  number: [],
  viscosity: ['torque', 'sampleC'],
  density: ['mass'],
  seen: ['difference', 'words'],
  foam: ['later'],
  spin: ['separated'],
  feel: [],
  free: ['label', 'words'],
}

const isEmpty = ({ kind }: RestedRow, text: RowTexts): boolean =>
  [...readingFields(text), ...results[kind]].every((field) => text(field).trim() === '')

function resultOf(row: RestedRow, reader: Reader): Partial<Result> {
  const { text } = reader
  switch (row.kind) {
    case 'number':
      return { ...figures(row, reader), ...sampleAt(reader) }
    case 'viscosity':
      return { ...figures(row, reader), ...sampleAt(reader), ...withHow(viscosityHow(reader)) }
    case 'density':
      return { ...density(row, reader), ...sampleAt(reader) }
    case 'seen':
      return seen(row, reader)
    case 'foam': {
      const later =
        text('later').trim() === '' ? {} : { later: { minutes: foamMinutes, value: reader.number('later') } }
      return { ...figures(row, reader), ...withHow(later) }
    }
    case 'spin':
      return spun(reader)
    case 'feel':
      return { ...figures(row, reader), ...withHow({ scale: scaleOf(row.check) }) }
    case 'free': {
      const words = text('words').trim()
      const hasFigure = words === '' || readingFields(text).some((field) => text(field).trim() !== '')
      return { ...(hasFigure ? figures(row, reader) : {}), ...(words === '' ? {} : { text: words }) }
    }
  }
}

/** One reading, or several with each of them kept: their mean is what counts. */
function figures({ check }: RestedRow, { text, number, note }: Reader): Partial<Result> {
  const filled = readingFields(text).filter((field) => text(field).trim() !== '')
  const readings = (filled.length === 0 ? ['reading.0'] : filled).map((field) => number(field))
  const unit = (check ? unitOf(check) : undefined) ?? text('unit').trim()
  if (unit === '' && needsUnit(check?.property ?? 'other')) note('unit', { code: 'CHECK_WITHOUT_UNIT' })
  const [value = 0] = readings
  return { value, ...(readings.length > 1 ? { readings } : {}), ...(unit === '' ? {} : { unit }) }
}

/** Signs that an entry takes of each. */
const longestSpindle = 40
const longestLabel = 200

const sampleAt = ({ text, number }: Reader): Partial<Result> =>
  text('sampleC').trim() === '' ? {} : { sampleC: number('sampleC', {}) }

function viscosityHow({ text, number, note }: Reader): HowRead {
  const spindle = text('spindle').trim()
  if (spindle.length > longestSpindle) note('spindle', { code: 'CHECK_NAME_LONG' })
  return {
    ...(spindle === '' ? {} : { spindle }),
    ...(text('rpm').trim() === '' ? {} : { rpm: number('rpm') }),
    ...(text('torque').trim() === '' ? {} : { torquePercent: number('torque') }),
  }
}

/** A figure, or what so much room of it weighed. */
function density(row: RestedRow, reader: Reader): Partial<Result> {
  if (reader.text('way') !== 'weighed') return figures(row, reader)
  const how = { massUg: reader.mass('mass'), volumeMl: reader.number('volume', { negative: false, zero: false }) }
  return { value: densityOf(how.massUg, how.volumeMl), unit: 'g/mL', how }
}

/** Beside the standard: a slight difference passes and stays legible, a clear one does not pass. */
function seen({ check }: RestedRow, { text, note }: Reader): Partial<Result> {
  const difference = differences.find((each) => each === text('difference'))
  const words = text('words').trim()
  if (difference === undefined) note('difference', { code: 'CHECK_NOT_JUDGED' })
  else if (words === '' && difference !== 'none') note('words', { code: 'CHECK_DIFFERENCE_UNSAID' })
  return {
    text: words === '' ? (check?.expected ?? 'as the standard') : words,
    good: difference !== 'clear',
    how: { difference: difference ?? 'none' },
  }
}

const differences = ['none', 'slight', 'clear'] as const

function spun({ text, number, note }: Reader): Partial<Result> {
  const by = text('spinBy') === 'g' ? 'g' : 'rpm'
  const spin = {
    by,
    figure: number('spin'),
    minutes: number('minutes'),
    separated: text('separated') === 'yes',
  } as const
  if (text('separated') === '') note('separated', { code: 'CHECK_NOT_JUDGED' })
  const words = text('words').trim()
  const usual = spin.separated ? 'separated' : 'did not separate'
  return { text: words === '' ? usual : words, good: !spin.separated, how: { spin } }
}

const withHow = (how: HowRead): Partial<Result> => (Object.keys(how).length === 0 ? {} : { how })
