import { describe, expect, test } from 'vitest'
import { recordOf } from '../../../../src/batch/record'
import { courseOf } from '../../../../src/batch/record-readings'
import { grams, minutesMs, openTestBench, type TestBench } from '../../../support/batch'
import { lotionHeader } from '../../../support/formulas'
import { runUpTo } from '../../../support/run'

function at(step: string): TestBench {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, step)
  return bench
}

const readingsOf = (bench: TestBench, step: string) =>
  recordOf(bench.state).steps.find(({ planned }) => planned.id === step)?.readings ?? []

describe('temperatures in the record', () => {
  test('[E60] a heating and a cooling list what was read for them, though nobody started them', () => {
    const bench = at('b-melt')
    for (const degrees of [21.5, 48, 76.5, 75.2]) {
      bench.wait(5)
      bench.intend({ do: 'read-temperature', vessel: 'oil', temperatureC: degrees, step: 'b-melt' })
    }
    bench.finish('b-melt')
    expect(readingsOf(bench, 'b-melt').map(({ temperatureC }) => temperatureC)).toEqual([21.5, 48, 76.5, 75.2])
    runUpTo(bench, 'c-cool')
    bench.wait(1)
    for (const degrees of [66, 52, 39.5]) {
      bench.wait(8)
      bench.read('main', degrees)
    }
    bench.finish('c-cool')
    const cooled = readingsOf(bench, 'c-cool')
    expect(cooled.map(({ temperatureC }) => temperatureC)).toEqual([66, 52, 39.5])
    expect((cooled[2]?.atMs ?? 0) - (cooled[0]?.atMs ?? 0)).toBe(minutesMs(16))
  })

  test('[E60] a struck reading, one of another step and one taken before do not count', () => {
    const bench = at('c-cool')
    bench.wait(2)
    bench.read('main', 700 / 10)
    const [wrong] = bench.intend({ do: 'read-temperature', vessel: 'main', temperatureC: 5.2, step: 'c-cool' })
    bench.strike(wrong?.id ?? '')
    bench.read('oil', 30)
    bench.intend({ do: 'read-temperature', vessel: 'main', temperatureC: 60, step: 'c-mix' })
    expect(readingsOf(bench, 'c-cool').map(({ temperatureC }) => temperatureC)).toEqual([70])
  })

  test('[E60] of a run the first and the last are told, and how far it went between them', () => {
    const read = (...degrees: readonly number[]) =>
      degrees.map((temperatureC, index) => ({ atMs: index, temperatureC }))
    expect(courseOf([])).toBeNull()
    expect(courseOf(read(20))).toEqual({ first: read(20)[0], last: read(20)[0] })
    expect(courseOf(read(20, 40, 75))).toEqual({
      first: { atMs: 0, temperatureC: 20 },
      last: { atMs: 2, temperatureC: 75 },
    })
    expect(courseOf(read(20, 82, 75))).toMatchObject({ highest: { atMs: 1, temperatureC: 82 } })
    expect(courseOf(read(20, 82, 12, 75))).toMatchObject({ lowest: { atMs: 2, temperatureC: 12 } })
  })
})

describe('lots in the record', () => {
  test('[E61] a lot that is opened in the run stands there by its code, as one of the catalogue does', () => {
    const bench = at('b-squalane')
    const lot = {
      id: 'lot-next',
      materialId: 'squalane',
      code: 'SQ-902',
      receivedUg: grams(500),
      status: 'released',
    } as const
    bench.intend({ do: 'choose-lots', line: 'squalane', lots: ['lot-next'], opened: [lot], reason: 'drum empty' })
    bench.weigh('b-squalane', '15', { lot: 'lot-next' })
    const colour = { ...lot, id: 'lot-colour', code: 'CO-7' }
    bench.intend({
      do: 'add-unplanned',
      name: 'Colour',
      vessel: 'main',
      netUg: grams('0.1'),
      lot: 'lot-colour',
      reason: 'c',
    })
    const record = recordOf(bench.state, undefined, new Map([['lot-colour', colour]]))
    expect(record.lotCodes.get('lot-next')).toBe('SQ-902')
    expect(record.materials.find(({ step }) => step === 'b-squalane')?.lots).toEqual(['SQ-902'])
    expect(record.unplanned[0]?.lot).toBe('CO-7')
  })
})
