import { describe, expect, test } from 'vitest'
import { chargeAt, chargeCurve } from '../../../src/trade/charge-curve'

const points = (...pairs: readonly (readonly [number, number])[]) => pairs.map(([ph, molPerKg]) => ({ ph, molPerKg }))

describe('the own charge of a batch', () => {
  test('[L75] readings within a tenth are one, at their mean', () => {
    expect(chargeCurve(points([5.44, -2], [5.4, 0], [6, -5]))).toEqual({ ph: [5.42, 6], molPerKg: [-1, -5] })
  })

  test('[L75] what would rise with the pH is levelled, each point by its weight', () => {
    const curve = chargeCurve(points([4, 0], [5, -3], [6, -2], [7, -9]))
    expect(curve).toEqual({ ph: [4, 5, 6, 7], molPerKg: [0, -2.5, -2.5, -9] })
  })

  test('[L75] fewer than two readings apart are no curve', () => {
    expect(chargeCurve([])).toBeNull()
    expect(chargeCurve(points([5, -1], [5.05, -1.2]))).toBeNull()
  })

  test('[L75] it is straight between its points, and goes on with the slope of its ends', () => {
    const curve = { ph: [4, 5, 6], molPerKg: [0, -2, -3] }
    expect([4.5, 5, 5.5, 3, 7].map((ph) => chargeAt(curve, ph))).toEqual([-1, -2, -2.5, 2, -4])
  })
})
