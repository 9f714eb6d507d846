import { expect, test } from 'vitest'
import { type StandardReading, standardOf, unlike, unlikeWords } from '../../../src/batch/read-unlike'
import { recordOf } from '../../../src/batch/record'
import { stabilityOf } from '../../../src/batch/stability'
import { middayOf, plan, plannedBench, pull } from '../../support/stability'

test.each<[string | undefined, StandardReading]>([
  ['spindle 4, 12 rpm, 25 °C, after 60 s', { spindle: '4', rpm: 12, sampleC: 25 }],
  ['Spindle no. CP-40 at 0,5 rpm', { spindle: 'CP-40', rpm: 0.5 }],
  ['at 20–25 °C, 10-12 rpm', {}],
  ['meter, neat, 25.5°C', { sampleC: 25.5 }],
  ['by eye', {}],
  [undefined, {}],
])('[K44] the method %j states %j', (method, stated) => {
  expect(standardOf(method)).toEqual(stated)
})

test('[K44] where the method is silent, the standard is how the batch itself was read', () => {
  const own = { how: { spindle: '3', rpm: 6, torquePercent: 50 }, sampleC: 22 }
  expect(standardOf('spindle 4', own)).toEqual({ spindle: '4', rpm: 6, sampleC: 22 })
})

test('[K44] another spindle, speed or temperature is called out with what was asked for; what nobody told is not', () => {
  const standard = { spindle: '4', rpm: 12, sampleC: 25 }
  const words = (how: object, sampleC?: number) =>
    unlikeWords(unlike(standard, { how, ...(sampleC === undefined ? {} : { sampleC }) }), { number: String })
  expect(words({ spindle: '3', rpm: 6 }, 30)).toBe('not as asked: spindle 4, 12 rpm, 25 °C')
  expect(words({ spindle: 'Spindle 4', rpm: 12 }, 28)).toBe('')
  expect(words({ spindle: '#4' }, 28.1)).toBe('not as asked: 25 °C')
  expect(words({ rpm: 10 })).toBe('not as asked: 12 rpm')
  expect(words({})).toBe('')
})

test('[K44] jars are held to the method, in the plan and in the record', () => {
  const measures = plan.measures.map((measure) =>
    measure.id === 'viscosity' ? { ...measure, method: 'spindle 4, 12 rpm, 25 °C' } : measure,
  )
  const bench = plannedBench({ measures })
  bench.nowMs = middayOf(7)
  bench.intend(pull('25c', 7, [{ measure: 'viscosity', value: 9000, how: { spindle: '3', rpm: 12 }, sampleC: 40 }]))
  expect(stabilityOf(bench.state)?.standards.get('viscosity')).toEqual({ spindle: '4', rpm: 12, sampleC: 25 })
  const [row] = recordOf(bench.state).results.stability
  expect(row?.check?.method).toContain('spindle 4')
  expect(row?.unlike).toEqual({ spindle: '4', sampleC: 25 })
})
