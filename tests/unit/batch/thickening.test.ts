import { describe, expect, test } from 'vitest'
import type { KindOf } from '../../../src/batch/step'
import { thickeningOf } from '../../../src/batch/thickening'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { formulas, headerFor } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const step = 'adjust-viscosity'

const atSalt = (): TestBench => {
  const bench = openTestBench(headerFor(formulas.shampoo))
  runUpTo(bench, step)
  return bench
}

const viscosity = { check: 'viscosity', property: 'viscosity', label: 'Viscosity', unit: 'mPa·s' } as const

const read = (bench: TestBench, value: number, conditions = 'spindle 3, 12 rpm', sampleC = 25): void =>
  bench.measure({ step, ...viscosity, value, conditions, sampleC })

const salt = (bench: TestBench, text: string): void => {
  bench.intend({ do: 'adjust', step, netUg: grams(text) })
}

const courseOf = (bench: TestBench) =>
  thickeningOf(bench.state, bench.state.plan.byId.get(step)?.step as KindOf<'adjust'>)

describe('thickening with salt', () => {
  test('[G52] a portion that lowered the viscosity is told', () => {
    const bench = atSalt()
    read(bench, 900)
    salt(bench, '1.5')
    expect(courseOf(bench)).toMatchObject({ unread: true, thinned: false, addedUg: grams('1.5') })
    read(bench, 1800)
    expect(courseOf(bench)).toMatchObject({ unread: false, thinned: false })
    salt(bench, '1.5')
    read(bench, 1500)
    expect(courseOf(bench)).toMatchObject({ thinned: true, addedUg: grams('3') })
    expect(courseOf(bench).readings.map(({ addedUg }) => addedUg)).toEqual([0, grams('1.5'), grams('3')])
  })

  test('[G52] what two readings differ by anyhow is no thinning', () => {
    const bench = atSalt()
    read(bench, 1800)
    salt(bench, '1')
    read(bench, 1720)
    expect(courseOf(bench).thinned).toBe(false)
  })

  test('[G52] readings of another spindle, speed or temperature are not compared', () => {
    for (const [conditions, sampleC] of [
      ['spindle 4, 12 rpm', 25],
      ['spindle 3, 12 rpm', 29],
    ] as const) {
      const bench = atSalt()
      read(bench, 1800)
      salt(bench, '1')
      read(bench, 900, conditions, sampleC)
      expect(courseOf(bench)).toMatchObject({ unlike: true, thinned: false })
    }
  })
})
