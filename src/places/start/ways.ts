import type { Format } from '../../app/format'
import type { Finding } from '../../batch/finding'
import type { PremixRecipe } from '../../batch/premix-recipe'
import type { Choice } from './choice'
import type { House } from './house'
import { nameOfLine, type SetUp } from './set-up'
import { noVessel } from './vessels'

/** Something to settle before the batch opens, with the ways to do so; keeping it with a reason is always one more. */
export interface SettleCard {
  readonly id: string
  readonly title: string
  readonly text: string
  /** What stands in the table beside each line it concerns. */
  readonly word: string
  readonly code: Finding['code']
  readonly abouts: readonly string[]
  readonly ways: readonly Way[]
  /** One-tap reasons for keeping it. */
  readonly reasons: readonly string[]
}

export interface Way {
  readonly label: string
  readonly sub?: string
  readonly take: (choice: Choice) => Choice
  /** Where there is more to choose than to take: how the line may be diluted, the first as `take` does it. */
  readonly mixes?: readonly PremixRecipe[]
}

export interface SettleWorld {
  readonly setUp: SetUp
  readonly house: House
  readonly format: Format
}

export const nameOf = ({ setUp }: SettleWorld, line: string): string => nameOfLine(setUp, line)
/** What every card begins with: `word` stands in the table. */
export const base = ({ code, about }: Pick<Finding, 'code' | 'about'>, word: string) => ({
  id: `${code} ${about}`,
  code,
  abouts: [about],
  word,
})

export const withLots =
  (line: string, lots: readonly string[]) =>
  (choice: Choice): Choice => ({ ...choice, lots: { ...choice.lots, [line]: [...lots] } })

export const withBalance =
  (lines: readonly string[], balance: string) =>
  (choice: Choice): Choice => ({
    ...choice,
    balances: { ...choice.balances, ...Object.fromEntries(lines.map((line) => [line, balance])) },
  })

export const withVessel =
  (need: string, kept: string) =>
  (choice: Choice): Choice => ({ ...choice, vessels: { ...choice.vessels, [need]: { ...noVessel, kept } } })

/** Weighs a line as a dilution; null weighs it neat again. */
export const withPremix =
  (line: string, premix: { readonly into: string; readonly oneIn: number } | null) =>
  (choice: Choice): Choice => {
    const { [line]: _before, ...others } = choice.premixes
    return { ...choice, premixes: premix === null ? others : { ...others, [line]: premix } }
  }

/** Lets a finding stand, with why; the record carries it. */
export const keeping =
  (code: Finding['code'], abouts: readonly string[], reason: string) =>
  (choice: Choice): Choice => ({
    ...choice,
    kept: [
      ...choice.kept.filter((each) => each.code !== code || !abouts.includes(each.about)),
      ...abouts.map((about) => ({ code, about, reason })),
    ],
  })
