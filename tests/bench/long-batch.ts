/** A batch of many lines and a long log, made by the app's own functions. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import type { Balance } from '../../src/batch/catalogue'
import type { Event } from '../../src/batch/event'
import type { BatchHeader } from '../../src/batch/header'
import type { ArchiveHeader } from '../../src/ports/archive'
import { formatMass, type Micrograms, massUnits, roundToStep } from '../../src/trade/mass'
import { openTestBench, type TestBench } from '../support/batch'
import { lotionHeader } from '../support/formulas'

export const lineCount = 200

const sizeUg = 20 * massUnits.kg
const balance: Balance = {
  id: 'bench-balance',
  name: 'Balance 2',
  stepUg: 10_000,
  capacityUg: 6 * massUnits.kg,
  repeatabilityUg: 10_000,
}

const idOf = (line: number): string => `line-${String(line).padStart(3, '0')}`
export const stepOf = (line: number): string => `weigh-${String(line).padStart(3, '0')}`
export const batchId = 'one'

/** One phase, so that the ladder shows every line: water to the rest, and lines of 0.4 % each. */
export function longHeader(): BatchHeader {
  const base = lotionHeader()
  const numbers = Array.from({ length: lineCount }, (_, line) => line)
  const lines = numbers.map((line) => ({
    id: idOf(line),
    materialId: idOf(line),
    amount:
      line === 0
        ? { kind: 'qs' as const, portions: [{ step: stepOf(0), rest: true as const }], heldBack: 0 }
        : { kind: 'fraction' as const, fraction: 0.004 },
  }))
  return {
    ...base,
    id: batchId,
    sizeUg,
    revision: {
      ...base.revision,
      usualSizeUg: sizeUg,
      phases: [{ letter: 'A', name: 'All lines', lines }],
      procedure: numbers.map((line) => ({
        id: stepOf(line),
        kind: 'weigh',
        vessel: 'main',
        phase: 'A',
        line: idOf(line),
      })),
      specification: [],
      vessels: [{ id: 'main', name: 'Main kettle', kind: 'vessel' }],
    },
    vessels: [{ id: 'main', name: 'Main kettle', kind: 'vessel', tareUg: 3 * massUnits.kg }],
    materials: numbers.map((line) => ({
      id: idOf(line),
      name: `Ingredient ${line + 1}`,
      inci: [{ name: `Ingredient ${line + 1}`, fraction: 1 }],
      function: 'made up for measuring',
    })),
    lots: numbers.map((line) => ({
      line: idOf(line),
      lots: [
        {
          id: `lot-${line}`,
          materialId: idOf(line),
          code: `L${line}`,
          receivedUg: 100 * massUnits.kg,
          status: 'released',
        },
      ],
    })),
    balances: [balance],
    balanceOfLine: numbers.map((line) => ({ line: idOf(line), balance: balance.id })),
  }
}

/** So many entries, every line part weighed and none done: parts of 1/60 of the target each, in turn. */
export function longBatch(entries: number): TestBench {
  const bench = openTestBench(longHeader())
  for (let at = 0; bench.events.length < entries; at += 1) {
    bench.wait(0.1)
    if (at % 10 === 9) bench.intend({ do: 'note', text: `Looked at the kettle, ${at}` })
    else bench.weigh(stepOf(at % lineCount), grams(roundToStep(targetUg(bench, at % lineCount) / 60, balance.stepUg)))
  }
  return bench
}

/** What is left of each line, as a person would type it. */
export const restsOf = (bench: TestBench): readonly { readonly step: string; readonly text: string }[] =>
  Array.from({ length: lineCount }, (_, line) => {
    const leftUg = targetUg(bench, line) - bench.step(stepOf(line)).netUg
    return { step: stepOf(line), text: grams(roundToStep(leftUg, balance.stepUg)) }
  })

/** The file that brings these entries in. */
export function archiveOf(events: readonly Event[]): Buffer {
  const lines = events.map((event) => `${JSON.stringify(event)}\n`).join('')
  const header: ArchiveHeader = {
    format: 'pannikin',
    version: 1,
    madeAt: '2026-11-24T12:00:00.000+00:00',
    streams: new Set(events.map(({ stream }) => stream)).size,
    events: events.length,
    sha256: bytesToHex(sha256(utf8ToBytes(lines))),
  }
  return Buffer.from(`${JSON.stringify(header)}\n${lines}`)
}

const targetUg = (bench: TestBench, line: number): Micrograms => bench.step(stepOf(line)).targets.at(-1) ?? 0

const grams = (massUg: Micrograms): string => formatMass(massUg, balance.stepUg, '.')
