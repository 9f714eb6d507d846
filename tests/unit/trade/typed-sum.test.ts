import { describe, expect, test } from 'vitest'
import { evaluateSum } from '../../../src/trade/typed-sum'

describe('typed sums', () => {
  test.each([
    ['250.31-187.02', 63.29],
    ['3/0.3', 10],
    ['0,1+0,2', 0.3],
    ['-(2 + 3) × 4', -20],
    ['12÷5', 2.4],
    ['1−−1', 2],
    ['42', 42],
    ['250.31-250.3', 0.01],
  ])('[L13] "%s" comes to %d', async (text, value) => {
    expect(await evaluateSum(text)).toEqual({ ok: true, value })
  })

  test.each([
    ['', 'NUMBER_EMPTY'],
    ['abs(3)', 'NUMBER_LETTERS'],
    ['pi*2', 'NUMBER_LETTERS'],
    ['2^3', 'NUMBER_LETTERS'],
    ['a=1', 'NUMBER_LETTERS'],
    ['1;2', 'NUMBER_LETTERS'],
    ['[1]', 'NUMBER_LETTERS'],
    ['5%', 'NUMBER_LETTERS'],
    ['3!', 'NUMBER_LETTERS'],
    ['1.2.3+1', 'NUMBER_TWO_MARKS'],
    ['2(3)', 'NUMBER_SUM_UNCLEAR'],
    ['3 4', 'NUMBER_SUM_UNCLEAR'],
    ['1\n2', 'NUMBER_SUM_UNCLEAR'],
    ['(1+2', 'NUMBER_SUM_UNCLEAR'],
    ['1+', 'NUMBER_SUM_UNCLEAR'],
    ['()', 'NUMBER_SUM_UNCLEAR'],
    ['1/0', 'NUMBER_SUM_UNCLEAR'],
    ['0/0', 'NUMBER_SUM_UNCLEAR'],
    [`${'1+'.repeat(30)}1`, 'NUMBER_SUM_UNCLEAR'],
    ['999999*999999', 'NUMBER_ABSURD'],
  ])('[L13] "%s" is refused', async (text, code) => {
    expect(await evaluateSum(text)).toMatchObject({ ok: false, refusal: { code } })
  })

  test('[L13] a sum is held to the same limits as a number', async () => {
    expect(await evaluateSum('1-2', { negative: false })).toMatchObject({ refusal: { code: 'NUMBER_NEGATIVE' } })
    expect(await evaluateSum('2-2', { zero: false })).toMatchObject({ refusal: { code: 'NUMBER_ZERO' } })
  })
})
