import { describe, expect, test } from 'vitest'
import { celsiusMeant } from '../../../src/batch/fahrenheit'

const heating = { kind: 'heating', targetC: 75 } as const
const cooling = { kind: 'cooling', targetC: 40 } as const

describe('[G7] a reading off a °F thermometer', () => {
  test('is known where it is no likely °C and a likely °F', () => {
    expect(celsiusMeant(167, heating)).toBe(75)
    expect(celsiusMeant(104, { ...cooling, lastC: 45 })).toBe(40)
    expect(celsiusMeant(150, cooling)).toBe(65.6)
  })

  test('is asked about only where it is more than 25 °C over what the vessel may have', () => {
    expect(celsiusMeant(100, heating)).toBeNull()
    expect(celsiusMeant(101, heating)).toBe(38.3)
    expect(celsiusMeant(125, cooling)).toBeNull()
    expect(celsiusMeant(126, cooling)).toBe(52.2)
    // Hotter before than its target: what it was counts.
    expect(celsiusMeant(110, { ...heating, lastC: 90 })).toBeNull()
    expect(celsiusMeant(116, { ...heating, lastC: 90 })).toBe(46.7)
  })

  test('is known by a jump from the last reading, while as °F it is near it', () => {
    // 86 °F are 30 °C: 61 above the last reading of 25 °C, and 5 from it.
    expect(celsiusMeant(86, { ...heating, lastC: 25 })).toBe(30)
    // 75 °C after 25 °C is 50 more, no more than that.
    expect(celsiusMeant(75, { ...heating, lastC: 25 })).toBeNull()
    expect(celsiusMeant(75.1, { ...heating, lastC: 25 })).toBe(23.9)
    // 68 °F are 20 °C, 25 from -5 °C: too far to be meant.
    expect(celsiusMeant(68, { ...heating, lastC: -5 })).toBeNull()
    expect(celsiusMeant(67.8, { ...heating, lastC: -5 })).toBe(19.9)
  })

  test('is not told where as °F it is frozen, or hotter than the vessel can be', () => {
    expect(celsiusMeant(32, { kind: 'heating', targetC: 5 })).toBeNull()
    expect(celsiusMeant(33.8, { kind: 'heating', targetC: 5 })).toBe(1)
    expect(celsiusMeant(185, heating)).toBe(85)
    expect(celsiusMeant(186, heating)).toBeNull()
  })
})
