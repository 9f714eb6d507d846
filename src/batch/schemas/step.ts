import * as v from 'valibot'
import type { Addition } from '../plan'
import type { Step } from '../step'
import { balanceSchema, lotSchema, materialSchema } from './catalogue'
import {
  aMass,
  anId,
  aSwitch,
  aTemperature,
  countUpTo,
  listOf,
  numberBetween,
  oneOf,
  prose,
  rangeOf,
  someMass,
  words,
} from './pieces'

const minutes = numberBetween(0, 60 * 24 * 30)

const everyStep = {
  id: anId,
  vessel: anId,
  phase: words(20),
  title: v.exactOptional(words()),
  instruction: v.exactOptional(prose()),
  after: v.exactOptional(listOf(anId, 100)),
  secondPerson: v.exactOptional(aSwitch),
  caution: v.exactOptional(words(300)),
}

const rate = oneOf('sprinkle', 'stream', 'portions', 'all at once')

/** One step of a procedure, by its kind. */
export const stepSchema: v.GenericSchema<unknown, Step> = v.variant(
  'kind',
  [
    v.object({ ...everyStep, kind: v.literal('weigh'), line: anId }),
    v.object({ ...everyStep, kind: v.literal('charge'), cup: anId, rate, rinse: v.exactOptional(aSwitch) }),
    v.object({
      ...everyStep,
      kind: v.literal('combine'),
      from: anId,
      maxDifferenceC: v.exactOptional(numberBetween(0, 100)),
      bothAtLeastC: v.exactOptional(aTemperature),
      rinse: v.exactOptional(aSwitch),
    }),
    v.object({
      ...everyStep,
      kind: v.literal('heat'),
      targetC: aTemperature,
      covered: v.exactOptional(aSwitch),
      holdMinutes: v.exactOptional(minutes),
    }),
    v.object({ ...everyStep, kind: v.literal('cool'), targetC: aTemperature, by: oneOf('air', 'bath') }),
    v.object({ ...everyStep, kind: v.literal('hold'), minutes, startsWhen: v.exactOptional(words()) }),
    v.object({
      ...everyStep,
      kind: v.literal('hydrate'),
      minutes,
      shear: words(80),
      startsWhen: v.exactOptional(words()),
    }),
    v.object({
      ...everyStep,
      kind: v.literal('mix'),
      tool: words(80),
      rpm: v.exactOptional(rangeOf(numberBetween(0, 100_000))),
      minutes,
      noVortex: v.exactOptional(aSwitch),
    }),
    v.object({ ...everyStep, kind: v.literal('deaerate'), by: oneOf('stand', 'vacuum'), minutes }),
    v.object({ ...everyStep, kind: v.literal('measure'), check: anId }),
    v.object({
      ...everyStep,
      kind: v.literal('adjust'),
      property: oneOf('pH', 'viscosity'),
      line: anId,
      check: anId,
      portionUg: v.exactOptional(someMass),
      waitMinutes: v.exactOptional(minutes),
    }),
    v.object({ ...everyStep, kind: v.literal('make-up'), line: anId }),
    v.object({ ...everyStep, kind: v.literal('rest'), hours: numberBetween(0, 24 * 365) }),
    v.object({ ...everyStep, kind: v.literal('sample'), jars: countUpTo(1000), eachUg: aMass }),
    v.object({
      ...everyStep,
      kind: v.literal('fill'),
      units: v.exactOptional(countUpTo(100_000)),
      eachUg: v.exactOptional(aMass),
    }),
    v.object({ ...everyStep, kind: v.literal('clean') }),
    v.object({ ...everyStep, kind: v.literal('note'), text: prose() }),
  ],
  'a step kind that this version knows',
)

/** A line that the formula does not have. */
const besideSchema = v.object({
  line: v.object({
    id: anId,
    materialId: anId,
    amount: v.object({ kind: v.literal('fraction'), fraction: v.literal(0) }),
  }),
  phase: v.literal('+'),
  material: materialSchema,
  fraction: v.literal(0),
  targetUg: someMass,
  balance: balanceSchema,
  lots: listOf(lotSchema, 200),
})

/** One step of a rework: also what it adds. */
export const reworkStepSchema: v.GenericSchema<unknown, Step | Addition> = v.union([
  stepSchema,
  v.object({
    ...everyStep,
    kind: v.literal('add'),
    line: v.exactOptional(anId),
    name: words(),
    massUg: someMass,
    beside: v.exactOptional(besideSchema),
  }),
])
