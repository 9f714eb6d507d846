import type { Micrograms } from './mass'
import { accept, type Result, refuse } from './result'

/**
 * A balance as its data sheet or check describes it: readability (step), repeatability (standard deviation), capacity,
 * the half-width of its non-linearity, and its relative sensitivity error.
 */
export interface Balance {
  readonly stepUg: Micrograms
  readonly repeatabilityUg: Micrograms
  readonly capacityUg: Micrograms
  readonly linearityUg?: Micrograms
  readonly sensitivity?: number
}

/** How a net mass was read: pan tared before, pan left as it was, or the container weighed before and after. */
export type Reading =
  | { readonly mode: 're-tare'; readonly readingUg: Micrograms }
  | { readonly mode: 'cumulative'; readonly readingUg: Micrograms; readonly previousUg: Micrograms }
  | { readonly mode: 'by-difference'; readonly beforeUg: Micrograms; readonly afterUg: Micrograms }

export type WeighingRefusal = { readonly code: 'NET_NOT_POSITIVE'; readonly netUg: Micrograms }

export function netOf(reading: Reading): Result<Micrograms, WeighingRefusal> {
  const netUg = differenceOf(reading)
  return netUg > 0 ? accept(netUg) : refuse({ code: 'NET_NOT_POSITIVE', netUg })
}

function differenceOf(reading: Reading): Micrograms {
  switch (reading.mode) {
    case 're-tare':
      return reading.readingUg
    case 'cumulative':
      return reading.readingUg - reading.previousUg
    case 'by-difference':
      return reading.beforeUg - reading.afterUg
  }
}
