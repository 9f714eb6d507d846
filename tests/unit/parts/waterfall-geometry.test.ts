import { describe, expect, test } from 'vitest'
import { type Fall, fallScale } from '../../../src/parts/waterfall-geometry'

const whole = (to: number): Fall => ({ kind: 'whole', from: 0, to })
const step = (from: number, to: number): Fall => ({ kind: 'step', from, to })

describe('[L88] the picture of a loss', () => {
  test('[L88] begins at nothing where the steps are large beside the whole', () => {
    const scale = fallScale([whole(100), step(100, 40), whole(40)], 200)
    expect(scale).toMatchObject({ base: 0, isCut: false })
    expect([0, 40, 100].map(scale.at)).toEqual([0, 80, 200])
  })

  test('[L88] is cut where they are small, so that each step can be seen, and says from where', () => {
    const falls = [whole(500), step(500, 503), step(503, 495), step(495, 480), whole(480)]
    const scale = fallScale(falls, 300)
    expect(scale.isCut).toBe(true)
    expect(scale.base).toBeGreaterThan(400)
    expect(scale.base).toBeLessThan(480)
    expect(scale.at(503)).toBe(300)
    expect(scale.at(scale.base)).toBe(0)
    expect(scale.at(500) - scale.at(495)).toBeGreaterThan(40)
  })

  test('[L88] keeps steps below nothing, and no loss at all, within its width', () => {
    const below = fallScale([whole(10), step(10, -5), whole(-5)], 150)
    expect([below.at(-5), below.at(10)]).toEqual([0, 150])
    const level = fallScale([whole(500), step(500, 500), whole(500)], 150)
    for (const each of [500, level.base]) {
      expect(level.at(each)).toBeGreaterThanOrEqual(0)
      expect(level.at(each)).toBeLessThanOrEqual(150)
    }
  })
})
