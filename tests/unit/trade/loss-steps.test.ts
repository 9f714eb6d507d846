import { describe, expect, test } from 'vitest'
import { lossSteps } from '../../../src/trade/loss-steps'

const sums = {
  theoreticalUg: 500,
  addedUg: 520,
  inVesselsUg: 0,
  filledUg: 440,
  sampledUg: 30,
  evaporatedUg: 20,
  leftBehindUg: 8,
  spilledUg: 5,
  discardedUg: 4,
  residueUg: 8,
  unexplainedUg: 13,
  shortUg: 60,
  yieldFraction: 0,
  yieldOfTheoretical: 0,
  outFraction: 0,
}

describe('[L85] from theoretical to actual', () => {
  test('each step begins where the last one ended', () => {
    expect(lossSteps(sums)).toEqual({
      theoreticalUg: 500,
      steps: [
        { kind: 'put in', changeUg: 20, fromUg: 500, toUg: 520 },
        { kind: 'evaporated', changeUg: -20, fromUg: 520, toUg: 500 },
        { kind: 'sampled', changeUg: -30, fromUg: 500, toUg: 470 },
        { kind: 'residue', changeUg: -8, fromUg: 470, toUg: 462 },
        { kind: 'spilled', changeUg: -5, fromUg: 462, toUg: 457 },
        { kind: 'discarded', changeUg: -4, fromUg: 457, toUg: 453 },
        { kind: 'unexplained', changeUg: -13, fromUg: 453, toUg: 440 },
      ],
      actualUg: 440,
    })
  })

  test('nothing is unexplained before anything was filled, and nothing is not less than nothing', () => {
    const { steps, actualUg } = lossSteps({ ...sums, unexplainedUg: null, spilledUg: 0 })
    expect(steps.at(-1)).toEqual({ kind: 'unexplained', changeUg: 0, fromUg: 458, toUg: 458 })
    expect(steps.map(({ changeUg }) => Object.is(changeUg, -0))).toEqual(steps.map(() => false))
    expect(actualUg).toBe(458)
  })
})
