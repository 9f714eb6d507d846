import { describe, expect, test } from 'vitest'
import { forecastsOf } from '../../../src/batch/forecast'
import { studentQuantile } from '../../../src/trade/quantile'
import { lotionHeader, withSteps } from '../../support/formulas'
import { at, cooling, forecast, inAir, readings } from '../../support/thermal-bench'

describe('when a vessel gets there', () => {
  test('[L61] the moments are told from the readings of the step, in the room that Start was told', () => {
    const bench = at('c-cool', { ...inAir(), ambientC: 22 })
    readings(bench, 'c-cool', cooling)
    const { reach, outlook, readAgainAtMs = 0 } = forecast(bench, 'c-cool')
    expect(outlook.kind).toBe('time')
    const minutes = (ms = 0): number => (ms - bench.nowMs) / 60_000
    expect(minutes(reach?.likelyMs)).toBeCloseTo(14.2, 0)
    expect(minutes(reach?.fromMs)).toBeGreaterThan(11.5)
    expect(minutes(reach?.toMs)).toBeLessThan(17)
    expect(minutes(readAgainAtMs)).toBeLessThan(minutes(reach?.fromMs))
    expect(forecastsOf(bench.state, studentQuantile)).toHaveLength(1)
  })

  test('[L66] the room is asked for once, then known; a struck answer is asked for again', () => {
    const bench = at('c-cool', inAir())
    readings(bench, 'c-cool', cooling)
    expect(forecast(bench, 'c-cool').outlook).toEqual({ kind: 'ask', what: 'room' })
    const [told] = bench.intend({ do: 'tell-surroundings', about: { of: 'room', temperatureC: 22 } })
    expect(forecast(bench, 'c-cool').outlook.kind).toBe('time')
    bench.strike(told?.id ?? '')
    expect(forecast(bench, 'c-cool').outlook.kind).toBe('ask')
  })

  test('[L66] a changed bath and a cover that came off start the fit again', () => {
    const bench = at('c-cool')
    readings(bench, 'c-cool', cooling.slice(0, 4))
    expect(forecast(bench, 'c-cool').reach).toBeDefined()
    bench.wait(1)
    bench.intend({ do: 'change-bath', vessel: 'main', what: 'fresh cold water' })
    expect(forecast(bench, 'c-cool').outlook).toMatchObject({ kind: 'unclear', why: 'FEW_READINGS' })
    readings(bench, 'c-cool', [
      [1, 54],
      [3, 49],
      [5, 45.2],
      [7, 42],
    ])
    bench.intend({ do: 'tell-surroundings', about: { of: 'bath', vessel: 'main', temperatureC: 14 } })
    const again = forecast(bench, 'c-cool')
    expect(again.course.readings).toHaveLength(8)
    expect(again.outlook.kind === 'time' && again.outlook.fit.count).toBe(4)
    bench.wait(1)
    bench.intend({ do: 'change-bath', vessel: 'main', what: 'cover off' })
    expect(forecast(bench, 'c-cool').course.marks.map(({ what }) => what)).toEqual(['fresh cold water', 'cover off'])
    expect(forecast(bench, 'c-cool').reach).toBeUndefined()
  })

  test('[L66] a bath counts as read only since it was last changed', () => {
    const bench = at('c-cool')
    bench.intend({ do: 'tell-surroundings', about: { of: 'bath', vessel: 'main', temperatureC: 12 } })
    expect(forecast(bench, 'c-cool').course.bathC).toBe(12)
    bench.wait(1)
    bench.intend({ do: 'change-bath', vessel: 'main', what: 'fresh cold water' })
    expect(forecast(bench, 'c-cool').course.bathC).toBeUndefined()
  })

  test('[L66] something that goes into the vessel starts the readings anew', () => {
    const bench = at('c-cool')
    readings(bench, 'c-cool', cooling)
    const more = { name: 'cold water', vessel: 'main', netUg: 5_000_000, reason: 'to try' } as const
    bench.wait(1)
    bench.intend({ do: 'add-unplanned', ...more })
    expect(forecast(bench, 'c-cool').course.readings).toEqual([])
  })

  test('[L66] on a plate with a probe it is told to 2 °C under the set point; a new setting starts the fit again', () => {
    const bench = at('b-melt')
    const set = (setC: number) => bench.intend({ do: 'tell-surroundings', about: { of: 'plate', vessel: 'oil', setC } })
    set(75)
    expect(forecast(bench, 'b-melt').course).toMatchObject({ targetC: 73, askedC: 75, setC: 75, marks: [] })
    readings(bench, 'b-melt', [
      [0, 22],
      [2, 31],
      [4, 41],
      [6, 50],
      [8, 57],
    ])
    expect(forecast(bench, 'b-melt').reach).toBeDefined()
    bench.wait(1)
    set(80)
    expect(forecast(bench, 'b-melt').course).toMatchObject({ targetC: 75, askedC: 75 })
    expect(forecast(bench, 'b-melt').reach).toBeUndefined()
  })

  test('[L63] a bath nobody read hides nothing: it is asked for before it is called too warm', () => {
    const header = withSteps(lotionHeader(), (step) => (step.kind === 'cool' ? { ...step, targetC: 14 } : step))
    const bench = at('c-cool', header)
    readings(bench, 'c-cool', cooling)
    expect(forecast(bench, 'c-cool').outlook).toEqual({ kind: 'ask', what: 'bath' })
    bench.intend({ do: 'tell-surroundings', about: { of: 'bath', vessel: 'main', temperatureC: 17 } })
    expect(forecast(bench, 'c-cool').outlook).toEqual({ kind: 'never', levelC: 17 })
  })
})
