import { expect, test } from 'vitest'
import { msOf } from '../../../src/batch/instant'
import { dateIsoOf, isoOf } from '../../../src/batch/iso-of'

test.each([
  ['2026-06-16T10:35:00.000+01:00', Date.UTC(2026, 5, 16, 9, 35)],
  ['2026-06-16T10:35:00-03:30', Date.UTC(2026, 5, 16, 14, 5)],
  ['2026-06-16T10:35Z', Date.UTC(2026, 5, 16, 10, 35)],
  ['2028-02-29', Date.UTC(2028, 1, 29)],
  ['1969-12-31T23:59:59.999Z', -1],
  ['2026-06-16T10:35:00.5Z', Date.UTC(2026, 5, 16, 10, 35, 0, 500)],
])('[E6] %s is the moment that it says', (text, atMs) => {
  expect(msOf(text)).toBe(atMs)
})

test.each([
  '',
  'yesterday',
  '16.06.2026',
  '2026-6-1',
  '2026-06-16 10:35',
  '2026-06-16T10',
  '2026-13-01',
  '2026-02-30',
  '2026-06-16T24:10Z',
  '2026-06-16T10:61Z',
])('[E6] "%s" is no moment', (text) => {
  expect(msOf(text)).toBeNaN()
})

test('[E6] a moment is written with its local offset, and the local date may be another day', () => {
  const atMs = Date.UTC(2026, 10, 24, 23, 30)
  expect(isoOf(atMs, 60)).toBe('2026-11-25T00:30:00.000+01:00')
  expect(isoOf(atMs, 0)).toBe('2026-11-24T23:30:00.000Z')
  expect(isoOf(atMs, -210)).toBe('2026-11-24T20:00:00.000-03:30')
  expect(dateIsoOf(atMs, 60)).toBe('2026-11-25')
})
