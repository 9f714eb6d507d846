import { describe, expect, test } from 'vitest'
import { settledRecords } from '../../../src/trade/settled'

describe('[L74] readings to go by', () => {
  const at = (addedUg: number, ph: number) => ({ addedUg, ph })

  test('are the last of each amount', () => {
    const records = [at(0, 6.2), at(0, 6.25), at(800, 5.8), at(1600, 5.4), at(1600, 5.42)]
    expect(settledRecords(records, 'acid')).toEqual({
      records: [records[1], records[2], records[4]],
      contradiction: null,
    })
    expect(settledRecords([], 'acid')).toEqual({ records: [], contradiction: null })
    expect(settledRecords([at(0, 6)], 'acid')).toEqual({ records: [at(0, 6)], contradiction: null })
  })

  test('contradict each other where nothing was added between them and they differ by more than 0.17', () => {
    const how = (first: number, second: number) =>
      settledRecords([at(0, 9), at(5, first), at(5, second)], 'acid').contradiction
    expect(how(6, 6.16)).toBeNull()
    expect(how(6, 5.84)).toBeNull()
    expect(how(6, 6.18)).toEqual({ before: at(5, 6), after: at(5, 6.18), how: 'differ' })
    expect(how(6, 5.82)).toMatchObject({ how: 'differ' })
  })

  test('contradict what was added where the pH went the other way', () => {
    const how = (kind: 'acid' | 'base', second: number) =>
      settledRecords([at(0, 6), at(5, second)], kind).contradiction?.how
    expect([how('acid', 6.16), how('acid', 6.18), how('acid', 5)]).toEqual([undefined, 'against', undefined])
    expect([how('base', 5.84), how('base', 5.82), how('base', 7)]).toEqual([undefined, 'against', undefined])
  })
})
