import { describe, expect, test } from 'vitest'
import type { Check } from '../../../src/batch/formula'
import {
  type Condition,
  jarName,
  type Measure,
  readsNumber,
  type StabilityPlan,
} from '../../../src/batch/stability-plan'
import { planProblem } from '../../../src/batch/stability-plan-problem'
import { sameCheck, templateOf } from '../../../src/batch/stability-templates'
import { templateProblem } from '../../../src/batch/template-problem'
import { plan } from '../../support/stability'

const problem = (changed: Partial<StabilityPlan>) => planProblem({ ...plan, ...changed }, plan.startsAtMs)
const measure = (more: Partial<Measure>): Measure => ({ id: 'own', property: 'pH', label: 'Own', ...more })
const long = (letters: number): string => 'x'.repeat(letters)

describe('[K33] a plan for kept jars', () => {
  test('stands as it is, and not without a name, a condition, a check or a pull', () => {
    expect(problem({})).toBeNull()
    expect(problem({ name: ' ' })).toEqual({ code: 'PLAN_LACKS', what: 'name' })
    expect(problem({ conditions: [] })).toEqual({ code: 'PLAN_LACKS', what: 'condition' })
    expect(problem({ measures: [] })).toEqual({ code: 'PLAN_LACKS', what: 'check' })
    expect(problem({ pulls: [] })).toEqual({ code: 'PLAN_LACKS', what: 'pull' })
  })

  test('takes a name of eighty signs without the blanks round it, and says which text is longer', () => {
    expect(problem({ name: ` ${long(80)} ` })).toBeNull()
    expect(problem({ name: ` ${long(81)}` })).toEqual({ code: 'PLAN_LONG', what: `${long(24)}…`, most: 80 })
    const conditions: Condition[] = [{ id: 'own', label: ` ${long(81)}` }]
    expect(problem({ conditions })).toEqual({ code: 'PLAN_LONG', what: `${long(24)}…`, most: 80 })
  })

  test('names its jars by week, by day or by cycle', () => {
    const warm = { id: '40c', label: '40 °C' }
    expect([0, 1, 7, 13, 28].map((day) => jarName(warm, day))).toEqual([
      '40 °C, day 0',
      '40 °C, day 1',
      '40 °C, week 1',
      '40 °C, day 13',
      '40 °C, week 4',
    ])
    expect(jarName({ ...warm, cycles: { hours: 48, pulls: [1, 3] } }, 7)).toBe('40 °C, cycle 7')
  })
})

describe('[K35] what is read of a jar', () => {
  test.each<[Partial<Measure>, boolean]>([
    [{ property: 'appearance' }, false],
    [{ property: 'colour' }, false],
    [{ property: 'odour' }, false],
    [{ property: 'centrifuge' }, false],
    [{ property: 'other' }, false],
    [{ property: 'other', unit: 'mm' }, true],
    [{ property: 'other', limits: { max: 3 } }, true],
    [{ property: 'pH' }, true],
    [{ property: 'viscosity' }, true],
    [{ property: 'feel' }, true],
  ])('%j is a number: %s', (more, isNumber) => {
    expect(readsNumber(measure(more))).toBe(isNumber)
  })
})

describe('[K45] a template', () => {
  const template = templateOf('own', ' Four weeks ', plan)

  test('is its plan under a name without blanks, and without limits, which belong to a formula', () => {
    expect(template).toEqual({
      id: 'own',
      name: 'Four weeks',
      conditions: plan.conditions,
      pulls: plan.pulls,
      measures: [
        { id: 'ph-rested', property: 'pH', label: 'pH, rested' },
        { id: 'viscosity', property: 'viscosity', label: 'Viscosity, rested', unit: 'mPa·s' },
        { id: 'look', property: 'appearance', label: 'Appearance' },
      ],
    })
  })

  test('reads the check of its id and property, else that of its name, however it is written', () => {
    const check = (id: string, property: Check['property'], label: string): Check => ({
      id,
      property,
      label,
      when: 'after-rest',
    })
    const checks = [check('a', 'pH', 'Own'), check('own', 'density', 'Own'), check('own', 'pH', 'Other')]
    expect(sameCheck(checks, measure({}))).toBe(checks[2])
    expect(sameCheck(checks.slice(0, 2), measure({ label: ' oWN ' }))).toBe(checks[0])
    expect(sameCheck([check('a', 'pH', ' Own ')], measure({ label: 'own' }))?.id).toBe('a')
    expect(sameCheck(checks.slice(1, 2), measure({}))).toBeUndefined()
    expect(sameCheck([check('a', 'pH', 'Mine')], measure({}))).toBeUndefined()
  })

  test('is not kept without a name, under one too long or one that another has, nor where no plan comes of it', () => {
    const with_ = (changed: object, others = [{ ...template, id: 'other' }]) =>
      templateProblem({ ...template, ...changed }, others)
    expect(with_({ name: 'Mine' })).toBeNull()
    expect(with_({ name: '  ' })).toEqual({ code: 'TEMPLATE_NAMELESS' })
    expect(with_({ name: ` ${long(80)} ` })).toBeNull()
    expect(with_({ name: long(81) })).toEqual({ code: 'TEMPLATE_NAME_LONG', most: 80 })
    expect(with_({ name: ' four   WEEKS' })).toEqual({ code: 'TEMPLATE_THERE', name: 'Four weeks' })
    expect(with_({}, [template])).toBeNull()
    expect(with_({ name: 'Mine', pulls: [] })).toEqual({ code: 'PLAN_LACKS', what: 'pull' })
  })
})
