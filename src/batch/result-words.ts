import type { Micrograms } from '../trade/mass'
import { replicatesOf } from '../trade/replicates'
import { type Difference, type HowRead, torqueIsOff } from './how-read'
import type { Bodies } from './kinds'

interface Figures {
  readonly mass: (massUg: Micrograms) => string
  readonly number: (value: number) => string
}

/** How a result was read, in parts: every reading with its spread, the spindle, the spin, the difference seen. */
export function howWords(
  { readings = [], how = {}, unit }: Pick<Bodies['measured'], 'readings' | 'how' | 'unit'>,
  say: Figures,
): readonly string[] {
  const { spindle, rpm, massUg, volumeMl, difference, spin, scale } = how
  return [
    readingsWords(readings, say),
    spindle === undefined ? '' : `spindle ${spindle}`,
    rpm === undefined ? '' : `${say.number(rpm)} rpm`,
    torqueWords(how, say),
    massUg === undefined || volumeMl === undefined ? '' : `${say.mass(massUg)} in ${say.number(volumeMl)} mL`,
    difference === undefined ? '' : differenceWords(difference),
    how.later === undefined
      ? ''
      : `after ${say.number(how.later.minutes)} min ${say.number(how.later.value)}${unit === undefined ? '' : ` ${unit}`}`,
    spin === undefined
      ? ''
      : `${say.number(spin.figure)} ${spin.by === 'g' ? '× g' : 'rpm'} for ${say.number(spin.minutes)} min`,
    scale === undefined ? '' : `${scale.least} ${scale.low}, ${scale.most} ${scale.high}`,
  ].filter((part) => part !== '')
}

/** "3 readings: 11,300, 11,200, 11,400; s 100"; of two the range. */
function readingsWords(readings: readonly number[], say: Pick<Figures, 'number'>): string {
  const told = replicatesOf(readings)
  if (told?.spread == null) return ''
  const { kind, value } = told.spread
  const three = Number(value.toPrecision(3))
  return `${told.n} readings: ${readings.map(say.number).join('; ')}; ${kind} ${say.number(three)}`
}

function torqueWords(how: HowRead, say: Pick<Figures, 'number'>): string {
  if (how.torquePercent === undefined) return ''
  return `torque ${say.number(how.torquePercent)} %${torqueIsOff(how) ? ', outside 10–100 %' : ''}`
}

export function differenceWords(difference: Difference): string {
  switch (difference) {
    case 'none':
      return 'as the standard'
    case 'slight':
      return 'slightly different from the standard'
    case 'clear':
      return 'clearly different from the standard'
  }
}
