import * as v from 'valibot'
import type { StabilityPlan } from '../stability-plan'
import type { KeptTemplate } from '../stability-templates'
import { aProperty, aScale } from './how-read'
import { aBasis, anId, aSwitch, countUpTo, limits, listOf, numberBetween, prose, words } from './pieces'

/** What a plan and a template have in common. */
const asked = {
  conditions: listOf(
    v.object({
      id: anId,
      label: words(80),
      accelerated: v.exactOptional(aSwitch),
      cycles: v.exactOptional(v.object({ hours: numberBetween(1, 336), pulls: listOf(countUpTo(100), 100) })),
    }),
    40,
  ),
  pulls: listOf(v.object({ day: numberBetween(0, 3650), windowDays: numberBetween(0, 60) }), 100),
  measures: listOf(
    v.object({
      id: anId,
      property: aProperty,
      label: words(),
      unit: v.exactOptional(prose(40)),
      method: v.exactOptional(prose()),
      basis: v.exactOptional(aBasis),
      limits: v.exactOptional(limits),
      expected: v.exactOptional(prose()),
      scale: v.exactOptional(aScale),
    }),
    100,
  ),
}

/** What a stability plan from outside must be. */
export const stabilityPlanSchema: v.GenericSchema<unknown, StabilityPlan> = v.object({
  name: words(80),
  startsAtMs: numberBetween(0, 1e15),
  ...asked,
})

export const keptTemplateSchema: v.GenericSchema<unknown, KeptTemplate> = v.object({
  id: anId,
  name: words(80),
  ...asked,
  archived: v.exactOptional(aSwitch),
})
