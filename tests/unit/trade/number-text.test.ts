import { describe, expect, test } from 'vitest'
import { isSum, readDecimal, readMass, splitUnit } from '../../../src/trade/number-text'

describe('typed numbers', () => {
  test.each([
    ['1.5', 1.5],
    ['1,5', 1.5],
    [' +0.1 ', 0.1],
    ['−3', -3],
    ['-3', -3],
    ['.5', 0.5],
    ['5,', 5],
    ['007', 7],
    ['+  12.345', 12.345],
    ['-0', 0],
  ])('"%s" is %d', (text, value) => {
    expect(readDecimal(text)).toEqual({ ok: true, value })
  })

  test.each([
    ['', { code: 'NUMBER_EMPTY' }],
    ['  ', { code: 'NUMBER_EMPTY' }],
    ['-', { code: 'NUMBER_EMPTY' }],
    [',', { code: 'NUMBER_EMPTY' }],
    ['12 abc', { code: 'NUMBER_LETTERS', text: '12 abc' }],
    ['1e3', { code: 'NUMBER_LETTERS', text: '1e3' }],
    ['٣', { code: 'NUMBER_LETTERS', text: '٣' }],
    ['1,234.5', { code: 'NUMBER_TWO_MARKS', text: '1,234.5' }],
    ['1..5', { code: 'NUMBER_TWO_MARKS', text: '1..5' }],
    ['1 234', { code: 'NUMBER_TWO_MARKS', text: '1 234' }],
    ['3/0.3', { code: 'NUMBER_SUM_UNCLEAR', text: '3/0.3' }],
    ['--4', { code: 'NUMBER_SUM_UNCLEAR', text: '--4' }],
    ['2000000000', { code: 'NUMBER_ABSURD', value: 2_000_000_000 }],
  ])('[L12] "%s" is refused with its reason', (text, refusal) => {
    expect(readDecimal(text)).toEqual({ ok: false, refusal })
  })

  test('[L12] negative, nothing and too much are refused where they are asked to be', () => {
    expect(readDecimal('-1', { negative: false })).toEqual({ ok: false, refusal: { code: 'NUMBER_NEGATIVE' } })
    expect(readDecimal('0,00', { zero: false })).toEqual({ ok: false, refusal: { code: 'NUMBER_ZERO' } })
    expect(readDecimal('14.1', { max: 14 })).toEqual({ ok: false, refusal: { code: 'NUMBER_ABSURD', value: 14.1 } })
    expect(readDecimal('0').ok && readDecimal('14', { max: 14 }).ok).toBe(true)
  })

  test.each([
    ['250.31-187.02', true],
    ['3/0.3', true],
    ['(1 + 2) × 3', true],
    ['-5+2', true],
    ['-5', false],
    ['+ 5', false],
    ['12.5', false],
    ['12.5 g', false],
    ['a-b', false],
    ['', false],
    ['-', false],
  ])('"%s" is a sum: %s', (text, is) => {
    expect(isSum(text)).toBe(is)
  })
})

describe('typed masses', () => {
  test.each([
    ['0.3', 300_000],
    ['250,31', 250_310_000],
    ['1,5 kg', 1_500_000_000],
    ['1.5KG', 1_500_000_000],
    ['0.5mg', 500],
    ['3 µg', 3],
    ['3 ug', 3],
    ['1 oz', 28_349_523],
    ['0,5 lb', 226_796_185],
    ['0.0000005', 1],
    ['-0.001', -1_000],
    ['+  12.345 g', 12_345_000],
  ])('[L11] "%s" is exactly %d µg', (text, massUg) => {
    expect(readMass(text)).toEqual({ ok: true, value: massUg })
  })

  test.each([
    ['1 stone', { code: 'NUMBER_LETTERS', text: '1 stone' }],
    ['g', { code: 'NUMBER_EMPTY' }],
    ['1.2.3 g', { code: 'NUMBER_TWO_MARKS', text: '1.2.3' }],
    ['-1 g', { code: 'NUMBER_NEGATIVE' }],
    ['0.0000001', { code: 'NUMBER_ZERO' }],
    ['1000.1 kg', { code: 'NUMBER_ABSURD', value: 1_000_100_000_000 }],
  ])('[L12] "%s" is refused as a mass to weigh', (text, refusal) => {
    expect(readMass(text, { negative: false, zero: false })).toEqual({ ok: false, refusal })
  })

  test('[L12] a limit on a mass is in micrograms', () => {
    expect(readMass('221 g', { max: 220_000_000 })).toEqual({
      ok: false,
      refusal: { code: 'NUMBER_ABSURD', value: 221_000_000 },
    })
  })

  test('a unit is what stands behind the number, digits in it or not', () => {
    expect(splitUnit(' 75 °C ')).toEqual({ number: '75', unit: '°C' })
    expect(splitUnit('1.5 cm3')).toEqual({ number: '1.5', unit: 'cm3' })
    expect(splitUnit('12')).toEqual({ number: '12', unit: '' })
  })
})
