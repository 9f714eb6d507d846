import * as v from 'valibot'
import type { Scale } from '../formula'
import type { HowRead, Measured } from '../how-read'
import {
  aBasis,
  aMass,
  anId,
  aSwitch,
  aTemperature,
  countUpTo,
  listOf,
  numberBetween,
  oneOf,
  prose,
  words,
} from './pieces'

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
const howReadSchema: v.GenericSchema<unknown, HowRead> = v.object({
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

export const measuredSchema: v.GenericSchema<unknown, Measured> = v.object({
  step: v.exactOptional(anId),
  check: v.exactOptional(anId),
  property: aProperty,
  label: words(),
  value: v.exactOptional(numberBetween(-1e9, 1e9)),
  text: v.exactOptional(prose()),
  unit: v.exactOptional(prose(40)),
  basis: v.exactOptional(aBasis),
  sampleC: v.exactOptional(aTemperature),
  sampleUg: v.exactOptional(aMass),
  vessel: v.exactOptional(anId),
  conditions: v.exactOptional(prose()),
  good: v.exactOptional(aSwitch),
  readings: v.exactOptional(listOf(numberBetween(-1e9, 1e9), 50)),
  how: v.exactOptional(howReadSchema),
})
