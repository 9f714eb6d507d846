import type { BatchHeader } from '../../../src/batch/header.ts'
import { checkInstruments } from './acts.ts'
import type { Bench } from './bench.ts'

/** Opens the batch, with the bench looked over and the instruments checked. */
export function begin(bench: Bench, header: BatchHeader): Bench {
  const preflight = header.revision.preflight.map((text) => ({ text, done: true }))
  bench.intend({ do: 'open', header, preflight })
  checkInstruments(bench)
  return bench
}
