import { expect, test } from 'vitest'
import { rpmAtPowerPerVolume, rpmAtTipSpeed, tipSpeed } from '../../../src/trade/mixing'

const here = { rpm: 4000, diameterMm: 25, volume: 500 }

test('[L83] tip speed is π·d·n in m/s', () => {
  expect(tipSpeed(60, 1000)).toBeCloseTo(Math.PI, 12)
  expect(tipSpeed(4000, 25)).toBeCloseTo(5.235987756, 8)
  expect(tipSpeed(0, 25)).toBe(0)
})

test('[L83] at the same tip speed the edge of the other tool moves as fast', () => {
  const rpm = rpmAtTipSpeed(here, { diameterMm: 70, volume: 20_000 })
  expect(rpm).toBeCloseTo(1428.5714, 4)
  expect(tipSpeed(rpm, 70)).toBeCloseTo(tipSpeed(4000, 25), 12)
})

test('[L83] at the same power for each litre N³·D⁵ ÷ V is the same', () => {
  const to = { diameterMm: 70, volume: 20_000 }
  const rpm = rpmAtPowerPerVolume(here, to)
  expect((rpm ** 3 * to.diameterMm ** 5) / to.volume / ((4000 ** 3 * 25 ** 5) / 500)).toBeCloseTo(1, 12)
  expect(rpm).toBeCloseTo(2459.33, 1)
})

test('[L83] the same tool in the same batch turns as it did, and going there and back comes back', () => {
  for (const guide of [rpmAtTipSpeed, rpmAtPowerPerVolume]) {
    expect(guide(here, here)).toBeCloseTo(4000, 9)
    const there = { diameterMm: 61, volume: 9000 }
    expect(guide({ ...there, rpm: guide(here, there) }, here)).toBeCloseTo(4000, 9)
  }
})
