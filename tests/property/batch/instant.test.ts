import fc from 'fast-check'
import { test } from 'vitest'
import { msOf } from '../../../src/batch/instant'
import { dateIsoOf, isoOf } from '../../../src/batch/iso-of'
import { propertyRuns } from '../runs'

const moment = fc.integer({ min: Date.UTC(1900, 0, 1), max: Date.UTC(2200, 0, 1) })
const offset = fc.integer({ min: -14 * 60, max: 14 * 60 })

test('[E6] every moment comes back from its text, at any offset, and Date reads the same', () => {
  fc.assert(
    fc.property(moment, offset, (atMs, offsetMinutes) => {
      const text = isoOf(atMs, offsetMinutes)
      return msOf(text) === atMs && Date.parse(text) === atMs
    }),
    propertyRuns,
  )
})

test('[E6] without an offset it is what Date writes, and its date is the local one', () => {
  fc.assert(
    fc.property(moment, offset, (atMs, offsetMinutes) => {
      const local = new Date(atMs + offsetMinutes * 60_000).toISOString()
      return isoOf(atMs, 0) === new Date(atMs).toISOString() && dateIsoOf(atMs, offsetMinutes) === local.slice(0, 10)
    }),
    propertyRuns,
  )
})
