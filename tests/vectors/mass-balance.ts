import * as v from 'valibot'
import { expect } from 'vitest'
import { compositionAsMade, type MassBalance, massBalanceReading, reconcile } from '../../src/trade/composition'
import {
  addedInAll,
  contentsOf,
  inSink,
  type Ledger,
  type Movement,
  massIn,
  openLedger,
  post,
} from '../../src/trade/ledger'
import { microgramsFromGrams } from '../../src/trade/mass'
import { gramsFromMicrograms } from '../../src/trade/mass-ratio'
import { expectAbsolute } from './close'

const reading = v.object({
  type: v.literal('reading'),
  gross: v.number(),
  tare: v.number(),
  uBal: v.number(),
  from: v.optional(v.union([v.number(), v.string()])),
})
const givenShape = v.object({
  components: v.array(v.string()),
  water: v.number(),
  events: v.array(
    v.variant('type', [
      v.object({ type: v.literal('add'), i: v.number(), g: v.number() }),
      reading,
      v.object({ type: v.literal('makeup'), g: v.number() }),
      v.object({ type: v.literal('sample'), g: v.number() }),
      v.object({ type: v.literal('transfer'), g: v.number() }),
    ]),
  ),
})
const expectedShape = v.object({
  readings: v.array(
    v.object({
      theoretical: v.number(),
      net: v.number(),
      difference: v.number(),
      status: v.string(),
      makeUp: v.nullish(v.number()),
      possible: v.nullish(v.boolean()),
    }),
  ),
  contents: v.array(v.number()),
  total: v.number(),
  fractions: v.array(v.number()),
  added: v.number(),
  makeUpAdded: v.number(),
  removed: v.number(),
  evaporated: v.number(),
  yieldPct: v.number(),
})

type Given = v.InferOutput<typeof givenShape>
type Event = Given['events'][number]

/** Grams; the ledger works in whole micrograms. */
const tolerance = 1e-4

export function checkMassBalance(given: unknown, expected: unknown): void {
  const { components, water, events } = v.parse(givenShape, given)
  const answer = v.parse(expectedShape, expected)
  const { books, vessel, readings } = replay(components, components[water] ?? '', events)
  const near = (got: number, wanted: number, what: string): void => expectAbsolute(got, wanted, tolerance, what)
  const grams = (got: number, wanted: number, what: string): void => near(gramsFromMicrograms(got), wanted, what)

  expect(readings).toHaveLength(answer.readings.length)
  answer.readings.forEach((wanted, index) => {
    const got = readings[index]
    if (!got) throw new Error(`Reading ${index} is missing`)
    grams(got.theoreticalUg, wanted.theoretical, 'theoretical')
    grams(got.netUg, wanted.net, 'net')
    grams(got.differenceUg, wanted.difference, 'difference')
    expect(got.status).toBe(['loss', 'gain'].includes(wanted.status) ? wanted.status : 'nothing')
    if (typeof wanted.makeUp === 'number') grams(got.makeUpUg, wanted.makeUp, 'makeUp')
    if (typeof wanted.possible === 'boolean') expect(got.possible).toBe(wanted.possible)
  })

  const contents = contentsOf(books.batch, vessel)
  const made = compositionAsMade(books.batch, [vessel])
  components.forEach((component, index) => {
    grams(contents.get(component) ?? 0, answer.contents[index] ?? Number.NaN, `contents of ${component}`)
    near(made.get(component) ?? 0, answer.fractions[index] ?? Number.NaN, `fraction of ${component}`)
  })
  grams(massIn(books.batch, vessel), answer.total, 'total')
  grams(addedInAll(books.planned), answer.added, 'added')
  grams(addedInAll(books.madeUp), answer.makeUpAdded, 'makeUpAdded')
  grams(inSink(books.batch, 'sampled', 'left-behind'), answer.removed, 'removed')
  grams(inSink(books.batch, 'evaporated'), answer.evaporated, 'evaporated')
  near(reconcile(books.batch, addedInAll(books.planned)).yieldFraction, inFraction(answer.yieldPct), 'yield')
}

/** The batch's ledger, and two that keep only what was added by plan and by make-up. */
interface Books {
  readonly batch: Ledger
  readonly planned: Ledger
  readonly madeUp: Ledger
}

interface Replayed {
  readonly books: Books
  readonly vessel: string
  readonly readings: readonly MassBalance[]
}

function replay(components: readonly string[], water: string, events: readonly Event[]): Replayed {
  const books = { batch: openLedger(), planned: openLedger(), madeUp: openLedger() }
  const readings: MassBalance[] = []
  let vessel = 'beaker 0'
  for (const [index, event] of events.entries()) {
    switch (event.type) {
      case 'add':
        into([books.batch, books.planned], vessel, components[event.i] ?? '', event.g)
        break
      case 'makeup':
        into([books.batch, books.madeUp], vessel, water, event.g)
        break
      case 'sample':
        done(books.batch, {
          kind: 'remove',
          from: vessel,
          sink: 'sampled',
          massUg: microgramsFromGrams(event.g),
        })
        break
      case 'transfer': {
        const to = `beaker ${index}`
        done(books.batch, { kind: 'transfer', from: vessel, to, residueUg: microgramsFromGrams(event.g) })
        vessel = to
        break
      }
      case 'reading': {
        const component = typeof event.from === 'number' ? (components[event.from] ?? '') : (event.from ?? water)
        const read = massBalanceReading(books.batch, vessel, {
          grossUg: microgramsFromGrams(event.gross),
          tareUg: microgramsFromGrams(event.tare),
          uncertaintyUg: microgramsFromGrams(event.uBal),
          component,
        })
        readings.push(read)
        if (read.status === 'loss' && read.possible)
          done(books.batch, { kind: 'evaporate', from: vessel, component, massUg: read.makeUpUg })
      }
    }
  }
  return { books, vessel, readings }
}

function into(ledgers: readonly Ledger[], to: string, component: string, grams: number): void {
  for (const ledger of ledgers) done(ledger, { kind: 'add', to, component, massUg: microgramsFromGrams(grams) })
}

function done(ledger: Ledger, movement: Movement): void {
  expect(post(ledger, movement)).toMatchObject({ ok: true })
}

const inFraction = (percent: number): number => percent / 100
