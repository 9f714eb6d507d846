/** The checks of a formula, timed where they run in earnest: while somebody types in the editor. */
import type { Balance, Material } from '../../../src/batch/catalogue'
import type { Formula } from '../../../src/batch/formula'
import { checksOf } from '../../../src/batch/formula-checks'

export interface TimedFormula {
  readonly formula: Formula
  readonly materials: readonly Material[]
}

declare global {
  interface Window {
    /** Each of `rounds` times that everything was said about each formula, ms; in turn, so that a busy machine slows all. */
    timeChecks: (
      formulas: readonly TimedFormula[],
      balances: readonly Balance[],
      rounds: number,
    ) => readonly (readonly number[])[]
  }
}

/** The browser's clock tells tenths of a millisecond: what is quicker is timed by several. */
const times = 4

window.timeChecks = (formulas, balances, rounds) => {
  const asked = formulas.map(({ formula, materials }) => {
    const [revision] = formula.revisions
    if (!revision) throw new Error('A formula has a revision')
    return { formula, revision, known: new Map(materials.map((material) => [material.id, material])) }
  })
  return Array.from({ length: rounds }, () =>
    asked.map(({ formula, revision, known }) => {
      const startMs = performance.now()
      // A change in the editor makes a new revision; the materials stay.
      for (let time = 0; time < times; time += 1) checksOf({ ...revision }, formula, known, { balances })
      return (performance.now() - startMs) / times
    }),
  )
}
