import { expect, test } from 'vitest'
import { createFormat } from '../../../src/app/format'
import { stabilityOf } from '../../../src/batch/stability'
import { coursesOf } from '../../../src/batch/stability-trend'
import { coursePicture } from '../../../src/places/records/course-picture'
import { courseWords } from '../../../src/places/records/stability-words'
import { studentQuantile } from '../../../src/trade/quantile'
import { demonstrationBatches } from '../../house/demonstration/files'
import type { TestBench } from '../../support/batch'
import { middayOf, plan, plannedBench, pull } from '../../support/stability'

const format = createFormat('.', 'en-GB')

const courses = ({ state }: Pick<TestBench, 'state'>) => {
  const stability = stabilityOf(state)
  return stability === null ? [] : coursesOf(state, stability, studentQuantile)
}

/** Viscosity at 25 °C read on these days. */
function drifting(values: readonly (readonly [day: number, value: number])[], accelerated = false) {
  const bench = plannedBench({
    conditions: [{ id: '25c', label: '25 °C', ...(accelerated ? { accelerated } : {}) }],
    pulls: values.map(([day]) => ({ day, windowDays: 0 })),
    measures: plan.measures.map((each) => (each.id === 'viscosity' ? { ...each, limits: { min: 8000 } } : each)),
  })
  for (const [day, value] of values) {
    bench.nowMs = middayOf(day)
    bench.intend(pull('25c', day, [{ measure: 'viscosity', value }]))
  }
  const course = courses(bench).find(({ measure }) => measure.id === 'viscosity')
  if (!course) throw new Error('no course')
  return course
}

test('[K40] fewer than three results give no line, and say how many it takes', () => {
  const course = drifting([
    [0, 10_000],
    [28, 9900],
  ])
  expect(course.drift).toBeUndefined()
  expect(courseWords(course, format)).toEqual(['2 results: a line needs 3, at two times at least.'])
})

test('[K40] it is an indication only with few results, past what they carry, and where jars stand warm', () => {
  const few = [
    [0, 10_000],
    [28, 9950],
    [56, 9880],
  ] as const
  const many = [
    [0, 10_000],
    [14, 9700],
    [28, 9300],
    [42, 9010],
    [56, 8700],
  ] as const
  expect(drifting(few).drift?.indication).toEqual(['few', 'beyond'])
  expect(drifting(many).drift?.indication).toEqual([])
  expect(drifting(many, true).drift?.indication).toEqual(['accelerated'])
  const words = courseWords(drifting(many), format)
  expect(words[0]).toBe('−720 mPa·s a month.')
  expect(words[1]).toMatch(/^Its 95 % bound meets 8,000 mPa·s after 1[12](\.\d)? weeks\.$/)
  expect(courseWords(drifting(many, true), format).at(-1)).toBe('Indication only: warmer than a shelf.')
})

test('[K44] a line through results that were not all read as asked is an indication only', () => {
  const bench = plannedBench({
    conditions: [{ id: '25c', label: '25 °C' }],
    pulls: [0, 14, 28, 42, 56].map((day) => ({ day, windowDays: 0 })),
    measures: plan.measures.map((each) => (each.id === 'viscosity' ? { ...each, method: 'spindle 4' } : each)),
  })
  for (const [day, spindle] of [0, 14, 28, 42, 56].map((each) => [each, each === 28 ? '3' : '4'] as const)) {
    bench.nowMs = middayOf(day)
    bench.intend(pull('25c', day, [{ measure: 'viscosity', value: 10_000 - day, how: { spindle } }]))
  }
  const course = courses(bench).find(({ measure }) => measure.id === 'viscosity')
  expect(course?.points.map((point) => point.unlike ?? false)).toEqual([false, false, true, false, false])
  expect(course?.drift?.indication).toEqual(['unlike'])
})

test('[K40] the picture goes on to where the bound meets the limit, with its band', () => {
  const picture = coursePicture(
    drifting([
      [0, 10_000],
      [14, 9700],
      [28, 9300],
      [42, 9010],
      [56, 8700],
    ]),
    format,
  )
  expect(picture.zone).toMatchObject({ from: 8000 })
  expect(picture.marks?.[0]?.x).toBeGreaterThan(8)
  expect(picture.ahead?.at(-1)?.x).toBeGreaterThan(picture.marks?.[0]?.x ?? 99)
  for (const { low, high } of picture.band ?? []) expect(low).toBeLessThan(high)
})

test('[K40] the demonstration has a batch whose viscosity fell out of its limit in the warmth', () => {
  const thin = demonstrationBatches().find(({ state }) => state.header.code === 'QW-LOT-01-009')
  if (!thin) throw new Error('no batch 009')
  const hot = courses(thin).find(({ measure, condition }) => measure.id === 'viscosity' && condition.id === '40c')
  expect(hot?.points).toHaveLength(4)
  expect(hot?.points[0]).toMatchObject({ at: 0, start: true })
  expect(hot?.drift?.shelf.supported).toBeLessThan(1)
  expect(hot?.drift?.indication).toContain('accelerated')
})
