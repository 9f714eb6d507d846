import { describe, expect, it } from 'vitest'
import { type PadKey, padKeyOf, typeKey } from '../../../src/parts/pad-typing.ts'

const type = (keys: PadKey[], mark: '.' | ',' = '.', from = '') =>
  keys.reduce((text, key) => typeKey(text, key, mark), from)

describe('the number pad', () => {
  it('types figures and one decimal mark of the locale', () => {
    expect(type(['1', 'decimal', '8', 'decimal', '3'])).toBe('1.83')
    expect(type(['1', 'decimal', '8'], ',')).toBe('1,8')
  })

  it('puts a nought before a leading mark and takes it back before a figure', () => {
    expect(type(['decimal', '5'])).toBe('0.5')
    expect(type(['0', '5'])).toBe('5')
    expect(type(['0', 'decimal', '5'])).toBe('0.5')
  })

  it('allows one decimal mark in each number of a sum', () => {
    expect(type(['2', 'decimal', '5', '-', '1', 'decimal', '5'])).toBe('2.5-1.5')
    expect(type(['2', 'decimal', '5', '+', 'decimal', '5'])).toBe('2.5+0.5')
  })

  it('lets the newer of two signs stand, and no sum begin with plus', () => {
    expect(type(['2', '+', '-', '1'])).toBe('2-1')
    expect(type(['+', '3'])).toBe('3')
    expect(type(['-', '3'])).toBe('-3')
    expect(type(['-', '+', '3'])).toBe('3')
  })

  it('does not take a second mark after a pasted text with the other one', () => {
    expect(typeKey('1,2', 'decimal', '.')).toBe('1,2')
  })

  it('rubs out from the end, stops at nothing, and takes no more than a line', () => {
    expect(type(['rub-out'], '.', '12')).toBe('1')
    expect(type(['rub-out'])).toBe('')
    expect(typeKey('9'.repeat(32), '9', '.')).toHaveLength(32)
  })

  it('knows the keys of a hardware keyboard, both marks alike, and no others', () => {
    expect(['7', '.', ',', 'Decimal', '-', '−', '+', 'Backspace'].map(padKeyOf)).toEqual([
      '7',
      'decimal',
      'decimal',
      'decimal',
      '-',
      '-',
      '+',
      'rub-out',
    ])
    expect(['a', 'Enter', 'F5', '', ' ', '٣'].map(padKeyOf)).toEqual(Array(6).fill(undefined))
  })
})
