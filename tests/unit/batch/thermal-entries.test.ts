import { describe, expect, test } from 'vitest'
import { isoOf } from '../../../src/batch/iso-of'
import { recordOf } from '../../../src/batch/record'
import { at, cooling, readings } from '../../support/thermal-bench'

describe('what is entered', () => {
  test('[G7] a room, a bath and a plate that cannot be are refused, and change nothing', () => {
    const bench = at('c-cool')
    const refused = (about: Parameters<typeof bench.intend>[0] & { do: 'tell-surroundings' }) =>
      bench.refusal(about).code
    expect(refused({ do: 'tell-surroundings', about: { of: 'room', temperatureC: 71 } })).toBe('SURROUNDINGS_ABSURD')
    expect(refused({ do: 'tell-surroundings', about: { of: 'bath', vessel: 'main', temperatureC: -30 } })).toBe(
      'SURROUNDINGS_ABSURD',
    )
    expect(refused({ do: 'tell-surroundings', about: { of: 'plate', vessel: 'main', setC: Number.NaN } })).toBe(
      'SURROUNDINGS_ABSURD',
    )
    expect(refused({ do: 'tell-surroundings', about: { of: 'plate', vessel: 'bucket' } })).toBe('UNKNOWN_VESSEL_HERE')
    expect(bench.refusal({ do: 'change-bath', vessel: 'bucket', what: 'ice' }).code).toBe('UNKNOWN_VESSEL_HERE')
    expect(bench.refusal({ do: 'change-bath', vessel: 'main', what: ' ' }).code).toBe('REASON_MISSING')
  })

  test('[E44] a reading that is entered late stands where it was read, with its reason beside it', () => {
    const bench = at('c-cool')
    readings(bench, 'c-cool', [
      [0, 72],
      [10, 62],
    ])
    const readAtMs = bench.nowMs - 5 * 60_000
    const late = (occurredAt: string, reason: string) =>
      ({
        do: 'read-temperature',
        vessel: 'main',
        temperatureC: 67,
        step: 'c-cool',
        late: { occurredAt, reason },
      }) as const
    expect(bench.refusal(late(isoOf(bench.nowMs + 60_000, 60), 'gloves')).code).toBe('MOMENT_BAD')
    expect(bench.refusal(late('yesterday', 'gloves')).code).toBe('MOMENT_BAD')
    expect(bench.refusal(late(isoOf(readAtMs, 60), ' ')).code).toBe('REASON_MISSING')
    const [, note] = bench.intend(late(isoOf(readAtMs, 60), 'gloves on'))
    expect(note?.body).toMatchObject({ text: 'A temperature entered late: gloves on' })
    const kept = bench.state.vessels.get('main')?.readings ?? []
    expect(kept.slice(-3).map(({ temperatureC }) => temperatureC)).toEqual([72, 67, 62])
    expect(kept.at(-2)?.atMs).toBe(readAtMs)
  })

  test('[L66] the record shows the readings of a step and what was changed meanwhile, and no estimate', () => {
    const bench = at('c-cool')
    readings(bench, 'c-cool', cooling)
    bench.wait(1)
    bench.intend({ do: 'change-bath', vessel: 'main', what: 'fresh cold water' })
    readings(bench, 'c-cool', [[4, 39.5]])
    bench.finish('c-cool')
    const row = recordOf(bench.state).steps.find(({ planned: each }) => each.id === 'c-cool')
    expect(row?.readings).toHaveLength(7)
    expect(row?.marks.map(({ what }) => what)).toEqual(['fresh cold water'])
    expect(JSON.stringify(bench.events)).not.toMatch(/remaining|likely|forecast|estimate/i)
  })
})
