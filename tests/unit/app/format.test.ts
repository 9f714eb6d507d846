import { describe, expect, test } from 'vitest'
import { ago } from '../../../src/app/ago'
import { createFormat } from '../../../src/app/format'

const point = createFormat('.', 'en-GB')
const comma = createFormat(',', 'de-DE')

describe('figures as a person writes them', () => {
  test.each([
    [348_850_000, undefined, '348.85', '348,85'],
    [1_000_000, 1000, '1.000', '1,000'],
    [-4_000, 1000, '−0.004', '−0,004'],
    [12_345_600_000, 100_000, '12345.6', '12345,6'],
  ])('[A52] %d µg to %s is %s, or %s', (massUg, stepUg, withPoint, withComma) => {
    expect(point.mass(massUg, stepUg)).toBe(withPoint)
    expect(comma.mass(massUg, stepUg)).toBe(withComma)
  })

  test.each([
    [1_830_000, undefined, '1.83\u00a0g'],
    [9_999_990_000, undefined, '9999.99\u00a0g'],
    [12_400_000_000, undefined, '12.4\u00a0kg'],
    [20_000_000_000, undefined, '20\u00a0kg'],
    [100_000_000_000, 1_000_000, '100\u00a0kg'],
  ])('[A52] %d µg with its unit is %s', (massUg, stepUg, text) => {
    expect(point.massWithUnit(massUg, stepUg)).toBe(text)
  })

  test('[A52] percent and plain numbers take the same mark', () => {
    expect(point.percent(0.0133)).toBe('1.33\u00a0%')
    expect(comma.percent(0.4, 0)).toBe('40\u00a0%')
    expect(comma.number(0.1 + 0.2)).toBe('0,3')
    expect(point.number(-7.5, 1)).toBe('−7.5')
  })

  test.each([
    [0, '00:00'],
    [61_999, '01:01'],
    [-125_000, '02:05'],
    [3_600_000, '1:00:00'],
    [86_400_000, '24:00:00'],
  ])('[T6] %d ms last %s', (ms, text) => {
    expect(point.duration(ms)).toBe(text)
  })

  test.each([
    [0, 'just now'],
    [59_999, 'just now'],
    [180_000, '3 min ago'],
    [89 * 60_000, '89 min ago'],
    [2 * 3_600_000, '2 h ago'],
    [4 * 86_400_000, '4 days ago'],
  ])('[T6] %d ms since is %s', (ms, text) => {
    expect(ago(ms)).toBe(text)
  })
})
