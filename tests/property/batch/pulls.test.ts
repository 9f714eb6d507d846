import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dayMs, daysLate, pullsOf, standingOf } from '../../../src/batch/pulls'
import type { StabilityPlan } from '../../../src/batch/stability-plan'
import { planProblem } from '../../../src/batch/stability-plan-problem'
import { middayOf, plan } from '../../support/stability'
import { propertyRuns } from '../runs'

/** Plans that can be kept: days and counts that differ, in any order. */
const plans = fc
  .record({
    days: fc.uniqueArray(fc.integer({ min: 0, max: 400 }), { minLength: 1, maxLength: 8 }),
    windowDays: fc.integer({ min: 0, max: 20 }),
    counts: fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 4 }),
    hours: fc.integer({ min: 1, max: 96 }),
  })
  .map(
    ({ days, windowDays, counts, hours }): StabilityPlan => ({
      ...plan,
      pulls: days.map((day) => ({ day, windowDays })),
      conditions: [
        { id: '25c', label: '25 °C' },
        { id: 'ft', label: 'Freeze–thaw', cycles: { hours, pulls: counts } },
      ],
    }),
  )

test('[K34] every jar of a plan is to be pulled once, and passes through its standings in order, each for its time', () => {
  const order = ['to come', 'due', 'late', 'missed']
  fc.assert(
    fc.property(plans, fc.array(fc.integer({ min: -30, max: 900 }), { maxLength: 20 }), (any, days) => {
      expect(planProblem(any, middayOf(0))).toBeNull()
      const pulls = pullsOf(any)
      expect(new Set(pulls.map(({ id }) => id)).size).toBe(
        any.pulls.length + (any.conditions[1]?.cycles?.pulls.length ?? 0),
      )
      for (const pull of pulls) {
        expect(pull.dueAtMs - pull.fromMs).toBe(pull.untilMs - pull.dueAtMs)
        expect(standingOf(pull, pull.dueAtMs)).toBe('due')
        expect(pull.missedAtMs).toBeGreaterThanOrEqual(pull.untilMs)
        const ranks = [...days].sort((a, b) => a - b).map((day) => order.indexOf(standingOf(pull, middayOf(day))))
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
      }
    }),
    propertyRuns,
  )
})

test('[K36] days late are none up to the last moment in time, and then begun days', () => {
  fc.assert(
    fc.property(plans, fc.integer({ min: 1, max: 60 * dayMs }), (any, afterMs) => {
      for (const pull of pullsOf(any)) {
        expect(daysLate(pull, pull.untilMs)).toBe(0)
        const late = daysLate(pull, pull.untilMs + afterMs)
        expect(late).toBeGreaterThanOrEqual(afterMs / dayMs)
        expect(late).toBeLessThan(afterMs / dayMs + 1)
      }
    }),
    propertyRuns,
  )
})
