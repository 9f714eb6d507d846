import fc from 'fast-check'
import type { RemedyLine, RemedyProblem } from '../../../src/trade/remedy'
import type { Coupling } from '../../../src/trade/remedy-model'

const part = fc.record({
  weight: fc.integer({ min: 20, max: 400 }),
  /** Half the range, relative to the fraction. */
  range: fc.integer({ min: 2, max: 30 }).map((percent) => percent / 100),
  /** How much of its plan is in, in thousandths: mostly none or all of it, at times too much or too little. */
  progress: fc.oneof(
    { weight: 20, arbitrary: fc.constant(0) },
    { weight: 25, arbitrary: fc.integer({ min: 985, max: 1015 }) },
    { weight: 2, arbitrary: fc.integer({ min: 0, max: 1000 }) },
    { weight: 1, arbitrary: fc.integer({ min: 1015, max: 1600 }) },
  ),
  closed: fc.integer({ min: 0, max: 7 }).map((n) => n === 0),
  stock: fc.option(fc.integer({ min: 900, max: 1500 }), { freq: 3 }),
  costPerKg: fc.integer({ min: 1, max: 20_000 }).map((cents) => cents / 100),
})

type Part = typeof part extends fc.Arbitrary<infer T> ? T : never

/** Batches half-way, of 50–5,000 g and so many lines, the first of them q.s. with half to nine tenths of it. */
export const remedyProblems = (minLines: number, maxLines: number): fc.Arbitrary<RemedyProblem> =>
  fc
    .record({
      totalG: fc.integer({ min: 50, max: 5000 }),
      room: fc.oneof(fc.integer({ min: 1000, max: 2500 }), fc.constant(1050)),
      water: fc.integer({ min: 300, max: 900 }),
      parts: fc.array(part, { minLength: minLines, maxLength: maxLines }),
    })
    .map(({ totalG, room, water, parts }) => {
      const totalUg = totalG * 1e6
      const others = parts.slice(1).reduce((sum, { weight }) => sum + weight, 0)
      const fractionOf = ({ weight }: Part, index: number): number =>
        index === 0 ? water / 1000 : ((1 - water / 1000) * weight) / others
      const lines = parts.map((each, index) => lineOf(each, `line ${index}`, fractionOf(each, index), totalUg))
      return { totalUg, capacityUg: Math.round((totalUg * room) / 1000), qsIndex: 0, lines }
    })

function lineOf(each: Part, id: string, fraction: number, totalUg: number): RemedyLine {
  const planUg = fraction * totalUg
  return {
    id,
    fraction,
    low: fraction * (1 - each.range),
    high: Math.min(1, fraction * (1 + each.range)),
    tolerance: fraction * each.range,
    // As a balance of 0.01 g shows it.
    massUg: Math.round((planUg * each.progress) / 1000 / 10_000) * 10_000,
    // A closed step is seldom one that nothing was weighed in; now and then it was forgotten.
    locked: each.closed && (each.progress > 0 || each.range > 0.28),
    stockUg: each.stock === null ? null : Math.round((planUg * each.stock) / 1000),
    costPerKg: each.costPerKg,
  }
}

/** The same with one to three limits over several lines, near what the formula itself has. */
export const coupledProblems = (minLines: number, maxLines: number): fc.Arbitrary<RemedyProblem> =>
  fc
    .record({
      problem: remedyProblems(minLines, maxLines),
      limits: fc.array(
        fc.record({
          members: fc.uniqueArray(fc.integer({ min: 0, max: minLines - 1 }), { minLength: 2, maxLength: 5 }),
          share: fc.integer({ min: 10, max: 100 }).map((percent) => percent / 100),
          least: fc.integer({ min: 0, max: 1010 }).map((permille) => permille / 1000),
          most: fc.integer({ min: 970, max: 1100 }).map((permille) => permille / 1000),
          stock: fc.boolean(),
        }),
        { minLength: 1, maxLength: 3 },
      ),
    })
    .map(({ problem, limits }) => ({
      ...problem,
      couplings: limits.map(({ members, share, least, most, stock }, number): Coupling => {
        const lines = members.map((index) => problem.lines[index]).filter((line) => line !== undefined)
        const parts = lines.map(({ id }, index) => ({ line: id, share: index === 0 ? 1 : share }))
        const planned = lines.reduce((sum, { fraction }, index) => sum + fraction * (parts[index]?.share ?? 0), 0)
        const id = `limit ${number}`
        return stock
          ? {
              kind: 'stock',
              id,
              lines: lines.map((line) => line.id),
              stockUg: Math.round(planned * problem.totalUg * most),
            }
          : { kind: 'share', id, parts, low: planned * least, high: planned * most }
      }),
    }))
