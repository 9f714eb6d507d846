import * as v from 'valibot'
import type { Scale } from '../formula'
import type { HowRead } from '../how-read'
import { aMass, aSwitch, countUpTo, numberBetween, oneOf, words } from './pieces'

export const aProperty = oneOf(
  'pH',
  'viscosity',
  'density',
  'temperature',
  'appearance',
  'colour',
  'odour',
  'foam',
  'centrifuge',
  'feel',
  'other',
)

export const aScale: v.GenericSchema<unknown, Scale> = v.object({
  least: countUpTo(1000),
  most: countUpTo(1000),
  low: words(80),
  high: words(80),
})

const minutes = numberBetween(0, 60 * 24 * 30)

/** How a result was come by. */
export const howReadSchema: v.GenericSchema<unknown, HowRead> = v.object({
  spindle: v.exactOptional(words(40)),
  rpm: v.exactOptional(numberBetween(0, 1e6)),
  torquePercent: v.exactOptional(numberBetween(0, 1000)),
  massUg: v.exactOptional(aMass),
  volumeMl: v.exactOptional(numberBetween(0, 1e6)),
  difference: v.exactOptional(oneOf('none', 'slight', 'clear')),
  later: v.exactOptional(v.object({ minutes, value: numberBetween(-1e9, 1e9) })),
  spin: v.exactOptional(
    v.object({ by: oneOf('rpm', 'g'), figure: numberBetween(0, 1e6), minutes, separated: aSwitch }),
  ),
  scale: v.exactOptional(aScale),
})
