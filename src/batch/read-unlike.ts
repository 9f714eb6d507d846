import type { Measured } from './how-read'

/** How a check is to be read so that its figures can be compared. What nobody stated is absent. */
export interface StandardReading {
  readonly spindle?: string
  readonly rpm?: number
  readonly sampleC?: number
}

/** Readings further apart than this are not compared. */
export const comparableWithinC = 3

type Read = Pick<Measured, 'how' | 'sampleC'>

/** What the method of a check states, and where it is silent how the batch itself was read. */
export function standardOf(method: string | undefined, own?: Read): StandardReading {
  const { spindle, rpm } = own?.how ?? {}
  return {
    ...(spindle === undefined ? {} : { spindle }),
    ...(rpm === undefined ? {} : { rpm }),
    ...(own?.sampleC === undefined ? {} : { sampleC: own.sampleC }),
    ...statedIn(method ?? ''),
  }
}

/** "spindle 4, 12 rpm, 25 °C"; a range of temperatures states none. */
function statedIn(method: string): StandardReading {
  const [, spindle] = /\bspindle\s+(?:no\.?\s*|#\s*)?([\w-]+)/i.exec(method) ?? []
  const [, rpm] = /(?<![\d.,–-])(\d+(?:[.,]\d+)?)\s*rpm\b/i.exec(method) ?? []
  const [, sampleC] = /(?<![\d.,–-])(\d+(?:[.,]\d+)?)\s*°\s*C/i.exec(method) ?? []
  return {
    ...(spindle === undefined ? {} : { spindle }),
    ...(rpm === undefined ? {} : { rpm: numberIn(rpm) }),
    ...(sampleC === undefined ? {} : { sampleC: numberIn(sampleC) }),
  }
}

const numberIn = (text: string): number => Number(text.replace(',', '.'))

/** What the standard asks for where a reading was taken otherwise; empty where they can be compared, or nobody said how. */
export function unlike(standard: StandardReading, { how = {}, sampleC }: Read): StandardReading {
  const { spindle, rpm } = how
  return {
    ...(standard.spindle !== undefined && spindle !== undefined && plain(spindle) !== plain(standard.spindle)
      ? { spindle: standard.spindle }
      : {}),
    ...(standard.rpm !== undefined && rpm !== undefined && rpm !== standard.rpm ? { rpm: standard.rpm } : {}),
    ...(standard.sampleC !== undefined &&
    sampleC !== undefined &&
    Math.abs(sampleC - standard.sampleC) > comparableWithinC
      ? { sampleC: standard.sampleC }
      : {}),
  }
}

/** "spindle 4", "Spindle no. 4" and "#4" are one. */
const plain = (spindle: string): string =>
  spindle
    .trim()
    .toLowerCase()
    .replace(/^(?:spindle)?\s*(?:no\.?|#)?\s*/, '')

/** "not as asked: spindle 4, 25 °C"; nothing where it was read as asked. */
export function unlikeWords({ spindle, rpm, sampleC }: StandardReading, say: { number: (value: number) => string }) {
  const asked = [
    spindle === undefined ? '' : `spindle ${spindle}`,
    rpm === undefined ? '' : `${say.number(rpm)} rpm`,
    sampleC === undefined ? '' : `${say.number(sampleC)} °C`,
  ].filter((part) => part !== '')
  return asked.length === 0 ? '' : `not as asked: ${asked.join(', ')}`
}
